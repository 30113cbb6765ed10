import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import type { Quantity } from '../checks/check';
import { findLimit, limitBounds } from '../checks/limit';
import { trueValue } from '../checks/quantity';
import { compare, type Verdict, verdictOf } from '../checks/verdict';
import type { ConditionId } from '../rig/condition';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import { canRun } from '../symptoms/complaint';
import type { AfterRepair } from './grade';

/** A movement smaller than this share of the healthy value is not worth showing. */
const VISIBLE = 0.05;

/** Every judged reading that moves when the cause is repaired, those that the repair brings right first. */
export function readingsMovedByRepair(theCase: Case, { checks }: Catalogue, healthy: RigState): AfterRepair[] {
  const { rig, points } = theCase;
  const moved = [...checks.values()].flatMap((check) => {
    if (!check.ports[rig.id]) return [];
    return check.conditions.flatMap((condition) =>
      canRun(points, condition)
        ? check.quantities.flatMap((quantity) => beforeAndAfter(theCase, healthy, check.id, condition, quantity))
        : [],
    );
  });
  const rank = ({ verdictBefore, verdictAfter }: AfterRepair) => (verdictBefore === verdictAfter ? 1 : 0);
  return moved.sort((a, b) => rank(a) - rank(b));
}

function beforeAndAfter(
  theCase: Case,
  healthy: RigState,
  check: string,
  condition: ConditionId,
  quantity: Quantity,
): AfterRepair[] {
  const { rig, workOrder } = theCase;
  const line = findLimit(rig, check, condition, quantity.id);
  if (!line) return [];
  const before = trueValue(theCase, condition, quantity, workOrder.codes.length);
  const after = trueValue(healthy, condition, quantity, 0);
  const verdictBefore = trueVerdict(rig, check, condition, quantity.id, before);
  const verdictAfter = trueVerdict(rig, check, condition, quantity.id, after);
  if (verdictBefore === verdictAfter && Math.abs(after - before) <= VISIBLE * Math.abs(after)) return [];
  return [{ check, condition, quantity: quantity.id, limit: line.id, before, after, verdictBefore, verdictAfter }];
}

/** Pass or fail by the true value alone, as nobody's instrument could say it. */
export function trueVerdict(rig: Rig, check: string, condition: ConditionId, quantity: string, value: number): Verdict {
  const line = findLimit(rig, check, condition, quantity);
  return line ? verdictOf(compare(value, limitBounds(line), 0)) : 'cannot-tell';
}
