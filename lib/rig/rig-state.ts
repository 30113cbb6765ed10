import type { Fuel } from '../fluids/fuel';
import { type OperatingPoints, operatingPoints } from './operating-point';
import type { Rig } from './rig';
import type { Setting } from './setting';
import { Traces } from './traces/traces';

/** Everything that can be measured on a rig in its setting. */
export interface RigState {
  points: OperatingPoints;
  /** Computed when first asked for. */
  traces: Traces;
}

/** @throws SolveError when the rig has no steady state in some condition. */
export function rigState(rig: Rig, setting: Setting, fuel: Fuel): RigState {
  return { points: operatingPoints(rig, setting, fuel), traces: new Traces(rig, setting, fuel) };
}
