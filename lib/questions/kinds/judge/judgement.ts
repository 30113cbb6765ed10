import { compareMeasured, measured } from '../../../checks/expected';
import { limitBounds } from '../../../checks/limit';
import type { Shown } from '../../../checks/shown';
import { type Comparison, compare, GUARD } from '../../../checks/verdict';
import type { Gauge } from '../../../gauges/gauge';
import { accuracyLimit, readability, standardUncertainty } from '../../../gauges/uncertainty';
import { toSi } from '../../../units';
import { limitIn } from '../../shared/limit-words';
import type { Limited } from '../../shared/limited';

type ShownNumber = Extract<Shown, { kind: 'value' | 'off-scale' }>;

/** One reading, its instrument and its limit, with what they come to; all in the instrument's unit. */
export interface Judgement extends Limited {
  instrument: string;
  /** As it is set to this quantity. */
  gauge: Gauge;
  shown: ShownNumber;
  comparison: Comparison;
  /** What it shows, or the end of the range that the pointer stands at. */
  value: number;
  /** Largest error by its class, and by reading it. */
  accuracy: number;
  readable: number;
  uncertainty: number;
  guard: number;
  /** The end of the limit that decides, and how far inside of it the reading lies, negative outside. */
  end: 'min' | 'max';
  limit: number;
  inside: number;
}

/** @throws RangeError when the instrument showed no number. */
export function judgementOf(limited: Limited, instrument: string, gauge: Gauge, shown: ShownNumber): Judgement {
  const seen = measured(shown, gauge);
  if (!seen) throw new RangeError(`${instrument} showed nothing`);
  const value = shown.kind === 'value' ? shown.value : shown.limit;
  const uncertainty = standardUncertainty(gauge, value) / (toSi(1, gauge.unit) - toSi(0, gauge.unit));
  return {
    ...limited,
    instrument,
    gauge,
    shown,
    comparison: compareMeasured(seen, limitBounds(limited.line)),
    value,
    accuracy: accuracyLimit(gauge, value),
    readable: readability(gauge),
    uncertainty,
    guard: GUARD * uncertainty,
    ...nearestEnd(limited, gauge, value),
  };
}

function nearestEnd({ line }: Limited, { unit }: Gauge, value: number): Pick<Judgement, 'end' | 'limit' | 'inside'> {
  const { min, max } = limitIn(line, unit);
  const above = min === undefined ? Number.POSITIVE_INFINITY : value - min;
  const below = max === undefined ? Number.POSITIVE_INFINITY : max - value;
  return above < below
    ? { end: 'min', limit: min ?? 0, inside: above }
    : { end: 'max', limit: max ?? 0, inside: below };
}

/** Whether nobody who allows for the instrument's errors, however they add them up, comes to another verdict. */
export function isUndisputed(judgement: Judgement, { clearBy, closeWithin }: { clearBy: number; closeWithin: number }) {
  const { shown, comparison, gauge, inside, accuracy, readable, guard } = judgement;
  if (shown.kind === 'off-scale') return isSettledAtStop(judgement);
  const distance = Math.abs(inside);
  // On the limit itself, what only rounds its last digit would be taken at its word.
  if (comparison === 'too-close') return accuracy >= gauge.resolution / 2 && distance <= closeWithin * guard;
  return distance >= clearBy * (accuracy + readable);
}

/** A range that ends near the limit, or short of one that lies further on the other side, would start an argument. */
function isSettledAtStop({ shown, gauge, line, value, uncertainty }: Judgement): boolean {
  if (shown.kind !== 'off-scale') return false;
  const at = compare(value, limitIn(line, gauge.unit), uncertainty);
  return at !== 'too-close' && at !== (shown.end === 'high' ? 'below' : 'above');
}
