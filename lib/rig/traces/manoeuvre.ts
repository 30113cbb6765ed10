import type { Fuel } from '../../fluids/fuel';
import { type BoundRig, buildNetwork, type SideTemperatures } from '../build-network';
import type { SteadyConditionId } from '../condition';
import type { Rig, RigCondition } from '../rig';
import type { Setting } from '../setting';

/** What every manoeuvre is computed from. */
export interface Scene {
  rig: Rig;
  setting: Setting;
  fuel: Fuel;
}

/** A rig bound as in one condition, but run otherwise: without its lift pump, with another command, standing still. */
export function rebound(
  { rig, setting, fuel }: Scene,
  condition: SteadyConditionId,
  temperatures: SideTemperatures,
  change: Partial<RigCondition>,
): BoundRig {
  const conditions = { ...rig.conditions, [condition]: { ...rig.conditions[condition], ...change } };
  return buildNetwork({ ...rig, conditions }, setting, fuel, condition, temperatures);
}

/** The first time at which a recorded value reaches a level; the end when it never does. */
export function timeToReach(times: readonly number[], values: readonly number[], level: number): number {
  const index = values.findIndex((value) => value >= level);
  if (index < 0) return times[times.length - 1] ?? 0;
  if (index === 0) return times[0] ?? 0;
  const [t0 = 0, t1 = 0, v0 = 0, v1 = 0] = [times[index - 1], times[index], values[index - 1], values[index]];
  return t0 + ((level - v0) / (v1 - v0)) * (t1 - t0);
}

/** As `timeToReach`, for a value that falls to a level. */
export function timeToFall(times: readonly number[], values: readonly number[], level: number): number {
  return timeToReach(
    times,
    values.map((value) => -value),
    -level,
  );
}
