import { gaugeFor, showQuantity } from '../cases/perform-check';
import { compareMeasured, measured } from '../checks/expected';
import { findLimit, limitBounds } from '../checks/limit';
import { isLowRange } from '../checks/low-range';
import type { Shown } from '../checks/shown';
import { conditionsReachable } from '../symptoms/complaint';
import type { ReadingAct } from './acts';
import type { JudgedFinding } from './judged-finding';
import type { Marking, Numbered } from './marking';

type HookedUp = Pick<ReadingAct, 'check' | 'condition' | 'instrument'>;

/**
 * Whether a later reading of the same quantity, with another instrument or in another condition, settled what this one
 * could not tell; null where none that there is could have.
 */
export function settledLater(
  marking: Marking,
  finding: JudgedFinding,
  readings: readonly Numbered<ReadingAct>[],
): boolean | null {
  const { reading, quantity } = finding;
  const settled = readings.some((later) => {
    const shown = later.shown.find((item) => item.quantity === quantity.id);
    return later.seq > reading.seq && shown && differs(later, reading) && settles(marking, finding, later, shown);
  });
  if (settled) return true;
  return couldBeSettled(marking, finding) ? false : null;
}

/** Some instrument that could not burst, in some condition of the same check, says pass or fail of this case's rig. */
function couldBeSettled(marking: Marking, finding: JudgedFinding): boolean {
  const { check, quantity, reading } = finding;
  const { theCase, catalogue } = marking;
  const instruments = check.instruments.flatMap((id) => catalogue.gauges.get(id) ?? []);
  return conditionsReachable(theCase.points, check.conditions).some((condition) =>
    instruments.some((instrument) => {
      const other = { check: check.id, condition, instrument: instrument.id };
      if (!differs(other, reading) || isLowRange(instrument, check, condition, theCase.rig, catalogue.checks))
        return false;
      return settles(marking, finding, other, showQuantity(theCase, condition, instrument, quantity));
    }),
  );
}

function settles(
  { theCase, catalogue }: Marking,
  { quantity }: JudgedFinding,
  { check, condition, instrument }: HookedUp,
  shown: Shown,
): boolean {
  const gauge = catalogue.gauges.get(instrument);
  const seen = gauge && measured(shown, gaugeFor(gauge, quantity));
  const line = findLimit(theCase.rig, check, condition, quantity.id);
  return seen !== undefined && line !== undefined && compareMeasured(seen, limitBounds(line)) !== 'too-close';
}

function differs(one: HookedUp, other: HookedUp): boolean {
  return one.instrument !== other.instrument || one.condition !== other.condition;
}
