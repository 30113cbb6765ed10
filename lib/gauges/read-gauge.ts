import type { RandomStream } from '../random';
import type { Gauge } from './gauge';
import { accuracyLimit } from './uncertainty';

/** What one instrument shows, in its own unit. */
export type GaugeReading =
  | { kind: 'value'; value: number }
  | { kind: 'off-scale'; end: 'low' | 'high' }
  | { kind: 'destroyed' };

/**
 * One instrument's fixed error within one case, as a share of what its class allows: −1…1, drawn once, so that reading
 * twice shows the same.
 */
export function drawBias(stream: RandomStream): number {
  return stream.between(-1, 1);
}

/**
 * What an instrument shows for a true value: truth + its own error, at its resolution, as far as its range goes.
 *
 * @param truth  In the instrument's unit.
 * @param bias  −1…1 of what its class allows.
 */
export function readGauge(gauge: Gauge, truth: number, bias: number): GaugeReading {
  const { range, overRange, resolution } = gauge;
  if (overRange.kind === 'destroyed' && truth > range.max * overRange.ratio) return { kind: 'destroyed' };
  const raw = truth + bias * accuracyLimit(gauge, truth);
  const value = Math.round(raw / resolution) * resolution;
  if (value > range.max) return { kind: 'off-scale', end: 'high' };
  // A pointer that rests on its lower stop reads zero: a healthy "nothing" is not off the scale.
  if (value < range.min)
    return truth < range.min - accuracyLimit(gauge, range.min)
      ? { kind: 'off-scale', end: 'low' }
      : { kind: 'value', value: range.min };
  return { kind: 'value', value: tidy(value) };
}

/** Drops the binary dust that multiplying by a decimal resolution leaves. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
