import { z } from 'zod';
import type { Catalogue } from '../../../catalogue';
import { applyCause } from '../../../faults/apply-cause';
import { isSteady, type SteadyConditionId } from '../../../rig/condition';
import { type OperatingPoint, operatingPoint } from '../../../rig/operating-point';
import type { LimitLine, Rig } from '../../../rig/rig';
import type { Pascal } from '../../../units';
import type { RigDay } from '../../shared/rig-day';

const share = z.number().min(0).max(1);

/** Between which the severity of what is wrong is drawn; 0 is sound. */
export const severitySchema = z.tuple([share, share]);

/** What a rig does with something wrong with it. @throws RangeError when content has no such cause. */
export function brokenPoint(
  { rig, setting, fuel }: Pick<RigDay, 'rig' | 'setting' | 'fuel'>,
  fault: { cause: string; severity: number },
  condition: SteadyConditionId,
  { causes }: Pick<Catalogue, 'causes'>,
): OperatingPoint {
  const cause = causes.get(fault.cause);
  if (!cause) throw new RangeError(`Content has no cause ${fault.cause}`);
  return operatingPoint(applyCause(rig, cause, fault.severity), setting, fuel, condition);
}

/** Gauge pressure at a node. @throws RangeError when the rig has no such node. */
export function overAmbient({ pressures, values }: OperatingPoint, node: string): Pascal {
  const [pressure, ambient] = [pressures[node], values.ambientPressure];
  if (pressure === undefined || ambient === undefined) throw new RangeError(`No pressure at ${node}`);
  return pressure - ambient;
}

/** Below this share of the fuel that is asked for, nobody would measure with the engine pulling. */
const LEAST_SHARE = 0.6;

/** Whether the engine holds the condition well enough for a gauge to be read. */
export function holds({ values }: OperatingPoint): boolean {
  return (values.injectedShare ?? 0) >= LEAST_SHARE;
}

export type UpperLimit = LimitLine & { max: number; condition: SteadyConditionId };

/** Lines of a check that set a highest value in a condition that comes to rest. */
export function upperLimits({ limits }: Rig, check: string): UpperLimit[] {
  return limits.filter(
    (line): line is UpperLimit => line.check === check && line.max !== undefined && isSteady(line.condition),
  );
}
