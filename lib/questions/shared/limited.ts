import type { Catalogue } from '../../catalogue';
import type { Check, Quantity } from '../../checks/check';
import { findLimit } from '../../checks/limit';
import { type SteadyConditionId, steadyConditionIds } from '../../rig/condition';
import type { LimitLine, Rig } from '../../rig/rig';
import { checksOn } from './checks-on';

/** Something that is measured at rest, with the line of the limit sheet that judges it. */
export interface Limited {
  check: Check;
  condition: SteadyConditionId;
  quantity: Quantity;
  line: LimitLine;
}

/** Everything that a rig's sheet limits and an instrument with numbers shows, in the conditions of its procedure. */
export function limitedOn(rig: Rig, catalogue: Pick<Catalogue, 'checks' | 'topics'>, topic?: string): Limited[] {
  return checksOn(rig, catalogue, topic).flatMap((check) =>
    check.quantities.filter(isNumber).flatMap((quantity) =>
      steadyConditionIds.flatMap((condition) => {
        const line = check.conditions.includes(condition) && findLimit(rig, check.id, condition, quantity.id);
        return line ? [{ check, condition, quantity, line }] : [];
      }),
    ),
  );
}

/** Neither judged by eye nor counted nor read off a curve. */
export function isNumber({ grades, measures, of }: Quantity): boolean {
  return !grades && measures !== 'codes' && of.kind !== 'trace';
}
