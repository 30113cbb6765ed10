import { type SteadyConditionId, steadyConditionIds } from '@/lib/rig/condition';
import type { OperatingPoint } from '@/lib/rig/operating-point';
import type { RigState } from '@/lib/rig/rig-state';
import { Traces } from '@/lib/rig/traces/traces';
import { aRig, fuelOf, mildDay } from './bench-rig';

/** A state that is the same in every condition, with the traces of a sound tern-13 on a mild day. */
export function aState(point: Partial<OperatingPoint>): RigState {
  const whole = { pressures: {}, temperatures: {}, flows: {}, values: {}, ...point };
  const points = Object.fromEntries(steadyConditionIds.map((id) => [id, whole]));
  return {
    points: points as Record<SteadyConditionId, OperatingPoint>,
    traces: new Traces(aRig(), mildDay, fuelOf(mildDay)),
  };
}
