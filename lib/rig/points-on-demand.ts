import type { Fuel } from '../fluids/fuel';
import type { SteadyConditionId } from './condition';
import { comeToRest, type OperatingPoint, type OperatingPoints, pointAt, type Rested } from './operating-point';
import type { Rig } from './rig';
import type { Setting } from './setting';

/**
 * The operating points of one of many rigs that differ little: each solved when first asked for, setting out from the
 * same condition of a rig nearby.
 */
export class PointsOnDemand implements OperatingPoints {
  readonly #rested = new Map<SteadyConditionId, Rested>();
  readonly #points = new Map<SteadyConditionId, OperatingPoint>();

  constructor(
    private readonly rig: Rig,
    private readonly setting: Setting,
    private readonly fuel: Fuel,
    private readonly near?: PointsOnDemand,
  ) {}

  get 'key-on'() {
    return this.at('key-on');
  }

  get cranking() {
    return this.at('cranking');
  }

  get idle() {
    return this.at('idle');
  }

  get 'high-idle'() {
    return this.at('high-idle');
  }

  get 'full-load'() {
    return this.at('full-load');
  }

  get 'key-off'() {
    return this.at('key-off');
  }

  private at(condition: SteadyConditionId): OperatingPoint {
    const { rig, setting, fuel } = this;
    const point = this.#points.get(condition) ?? pointAt(rig, setting, fuel, condition, this.restedAt(condition));
    this.#points.set(condition, point);
    return point;
  }

  private restedAt(condition: SteadyConditionId): Rested {
    const { rig, setting, fuel, near } = this;
    const rested = this.#rested.get(condition) ?? comeToRest(rig, setting, fuel, condition, near?.restedAt(condition));
    this.#rested.set(condition, rested);
    return rested;
  }
}
