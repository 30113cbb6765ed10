import { compareMeasured, type Measured } from '../../checks/expected';
import { findLimit, limitBounds } from '../../checks/limit';
import { verdictOf } from '../../checks/verdict';
import type { Rig } from '../../rig/rig';
import type { ShownReading } from '../figure';

export type JudgedReading = ShownReading & Required<Pick<ShownReading, 'judged'>>;

/**
 * A reading with the line of the limit sheet that applies and the verdict that it earns.
 *
 * @throws RangeError where the sheet has no line for it.
 */
export function judgedReading(rig: Rig, reading: ShownReading, seen: Measured): JudgedReading {
  const { check, condition, shown } = reading;
  const line = findLimit(rig, check, condition, shown.quantity);
  if (!line) throw new RangeError(`No line of ${rig.id} judges ${check}, ${condition}`);
  const verdict = verdictOf(compareMeasured(seen, limitBounds(line)));
  return { ...reading, judged: { rig: rig.id, limit: line.id, verdict } };
}
