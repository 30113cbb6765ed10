import { expect } from 'vitest';
import { gaugeFor } from '@/lib/cases/perform-check';
import type { Gauge } from '@/lib/gauges/gauge';
import type { ShownReading } from '@/lib/questions/figure';
import { fromSi, toSi } from '@/lib/units';
import { aRig, catalogue } from './bench-rig';

/**
 * A reading stands beside the line that the sheet has for it and the verdict that the line calls for, reckoned in the
 * instrument's own unit. @returns the verdict.
 *
 * @source Guard band 1.645 u for one wrong verdict in twenty: JCGM 106:2012 clause 8.3, ISO 14253-1:2017 (from memory).
 */
export function expectJudged({ check, condition, instrument, shown, judged }: ShownReading): string {
  if (!judged || shown.kind !== 'value') throw new Error('A reading without a verdict');
  const { value, unit, quantity } = shown;
  const lines = aRig(judged.rig).limits.filter(
    (one) => one.check === check && one.condition === condition && one.quantity === quantity,
  );
  expect(lines.map(({ id }) => id)).toEqual([judged.limit]);
  const [line] = lines;
  const gauge = catalogue.gauges.get(instrument);
  const measured = catalogue.checks.get(check)?.quantities.find(({ id }) => id === quantity);
  if (!line || !gauge || !measured) throw new Error('A reading of nothing');
  const end = (limit: number | undefined, none: number) =>
    limit === undefined ? none : fromSi(toSi(limit, line.unit), unit);
  const [least, most] = [end(line.min, Number.NEGATIVE_INFINITY), end(line.max, Number.POSITIVE_INFINITY)];
  const keep = (1.645 * Math.hypot(...errorsOf(gaugeFor(gauge, measured), value))) / Math.sqrt(3);
  const fails = value < least - keep || value > most + keep;
  const passes = value >= least + keep && value <= most - keep;
  expect(judged.verdict, `${value} ${unit} by ${judged.limit}`).toBe(fails ? 'fail' : passes ? 'pass' : 'cannot-tell');
  return judged.verdict;
}

/** Neither all pass nor all fail, or there would be nothing to reason from. */
export function expectEachVerdict(verdicts: readonly string[]): void {
  for (const verdict of ['pass', 'fail'])
    expect(verdicts.filter((one) => one === verdict).length / verdicts.length, verdict).toBeGreaterThan(0.1);
}

/** By its class, and by reading it, in its own unit. */
function errorsOf({ accuracy, range, display, resolution }: Gauge, value: number): [number, number] {
  const readable = display === 'eye' ? 0 : display === 'digital' ? resolution / 2 : resolution;
  if (accuracy.kind === 'absolute') return [accuracy.amount, readable];
  const span = range.max - range.min;
  if (accuracy.kind === 'class') return [(span * accuracy.percentOfSpan) / 100, readable];
  const quarter = Math.min(3, Math.floor((4 * (value - range.min)) / span));
  const percent = accuracy.percentOfSpan[quarter === 0 ? 0 : quarter === 3 ? 2 : 1];
  return [(span * percent) / 100, readable];
}
