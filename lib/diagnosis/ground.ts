import type { Catalogue } from '../catalogue';
import { canHappen } from '../faults/apply-cause';
import { steadyConditionIds } from '../rig/condition';
import { PointsOnDemand } from '../rig/points-on-demand';
import type { Rig } from '../rig/rig';
import type { Setting } from '../rig/setting';
import { refined, type Sound, type Strata, strataOf } from './strata';
import { type Single, singlesOf } from './weigh';

/** What particles stand on: everything that could be wrong with a rig on its day, whatever a work order says. */
export class Ground {
  readonly sound: Sound;
  /** Of each cause, at its spread of severities. */
  readonly singles: readonly (readonly Single[])[];
  readonly #finer = new Map<Strata, readonly Single[]>();

  /** @throws RangeError when content has no such fuel. */
  constructor(rig: Rig, setting: Setting, { causes, fuels }: Pick<Catalogue, 'causes' | 'fuels'>) {
    const fuel = fuels.get(setting.fuel);
    if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
    this.sound = { rig, setting, fuel, points: new PointsOnDemand(rig, setting, fuel) };
    this.singles = [...causes.values()]
      .filter((cause) => canHappen(rig, cause, setting))
      .map((cause) => singlesOf(rig, strataOf(this.sound, cause)));
  }

  /** The same cause at twice as many severities. */
  finer(strata: Strata): readonly Single[] {
    const known = this.#finer.get(strata) ?? singlesOf(this.sound.rig, refined(this.sound, strata));
    this.#finer.set(strata, known);
    return known;
  }

  /**
   * Solves every condition of every severity. Where a solution sets out from moves its last digits: for particles of many work
   * orders to be the same whichever is asked for first, nothing may be left for them to solve in an order of their own.
   */
  solveAll(): this {
    for (const [single] of this.singles)
      for (const { points } of single?.strata.nodes ?? [])
        for (const condition of steadyConditionIds) void points[condition];
    return this;
  }
}
