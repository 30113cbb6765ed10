import type { ConditionId } from '../rig/condition';
import type { LimitLine, Rig } from '../rig/rig';
import { toSi } from '../units';

/** A limit in SI. */
export interface Bounds {
  min?: number;
  max?: number;
}

/** The line of the rig's limit sheet that applies; undefined where the sheet gives none. */
export function findLimit(rig: Rig, check: string, condition: ConditionId, quantity: string): LimitLine | undefined {
  return rig.limits.find((line) => line.check === check && line.condition === condition && line.quantity === quantity);
}

export function limitBounds({ min, max, unit }: LimitLine): Bounds {
  return {
    ...(min !== undefined && { min: toSi(min, unit) }),
    ...(max !== undefined && { max: toSi(max, unit) }),
  };
}
