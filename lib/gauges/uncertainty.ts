import { fromSi, toSi } from '../units';
import type { Gauge } from './gauge';

/**
 * Largest error the instrument's class allows at a reading, in its own unit.
 *
 * @source EN 837-1 classes are percent of span; ASME B40.100 grades give the lower quarter, middle half and upper
 * quarter of the scale apart. Both from memory.
 */
export function accuracyLimit({ accuracy, range }: Gauge, reading: number): number {
  const span = range.max - range.min;
  if (accuracy.kind === 'absolute') return accuracy.amount;
  if (accuracy.kind === 'class') return (accuracy.percentOfSpan / 100) * span;
  const share = (reading - range.min) / span;
  const [lower, middle, upper] = accuracy.percentOfSpan;
  return ((share < 0.25 ? lower : share > 0.75 ? upper : middle) / 100) * span;
}

/**
 * Standard uncertainty of a reading, SI. Accuracy and readability count as rectangular distributions.
 *
 *     u = √((a/√3)² + (r/√3)²)
 *
 * @param reading  In the instrument's unit.
 * @source JCGM 100 (GUM) 4.3.7, rectangular distribution.
 */
export function standardUncertainty(gauge: Gauge, reading: number): number {
  const inUnit = Math.hypot(accuracyLimit(gauge, reading), readability(gauge)) / Math.sqrt(3);
  return inUnit * (toSi(1, gauge.unit) - toSi(0, gauge.unit));
}

/**
 * In the instrument’s unit: half the step that can be told apart on a digital display; the whole of it by eye, as `resolution` is half a mark. What
 * is told apart at a glance leaves no doubt.
 */
export function readability({ display, resolution }: Gauge): number {
  if (display === 'eye') return 0;
  return display === 'digital' || display === 'codes' ? resolution / 2 : resolution;
}

/** A true SI value in the instrument's unit. */
export function inGaugeUnit(gauge: Gauge, si: number): number {
  return fromSi(si, gauge.unit);
}
