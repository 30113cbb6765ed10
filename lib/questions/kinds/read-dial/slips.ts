import { STANDARD_PRESSURE } from '../../../fluids/atmosphere';
import { fromSi, toSi, type Unit } from '../../../units';
import type { Slip } from '../../answer';
import { exact, exactNumber } from '../../shared/exact';
import type { DialReading } from './draw-reading';
import { scalePlace, tidy } from './scale-place';

/** What one small division is taken for by somebody who does not count them. */
const STEPS_BELIEVED = [0.1, 1, 2, 5, 10] as const;

/** Wrong readings that lie further from the right one than anybody may read it differently. */
export function readingSlips(reading: DialReading, tolerance: number): Slip[] {
  const all = [...countingSlips(reading), ...zeroSlips(reading), ...unitSlips(reading), ...swingSlips(reading)];
  return all.filter(({ value }) => Math.abs(value - reading.value) > 2.001 * tolerance);
}

/** From the wrong number, in the wrong direction, by the wrong step. */
function countingSlips({ value, gauge }: DialReading): Slip[] {
  const { scale, range, unit } = gauge;
  const { number, divisions } = scalePlace(value, gauge);
  const next = number + scale.major;
  const past = divisions * scale.minor;
  const steps = STEPS_BELIEVED.filter(
    (step) => step !== scale.minor && step * 5 >= scale.minor && step <= 2 * scale.minor,
  );
  return [
    ...steps
      .filter((step) => divisions * step < scale.major)
      .map((step) => ({
        value: tidy(number + divisions * step),
        line: { say: 'slipStep', with: { believed: exact(step, unit), step: exact(scale.minor, unit) } },
      })),
    ...(next < range.max
      ? [{ value: tidy(next + past), line: { say: 'slipNext', with: { next: exactNumber(next) } } }]
      : []),
    { value: tidy(next - past), line: { say: 'slipBackwards', with: { next: exactNumber(next) } } },
  ];
}

/** The wrong side of zero, or a zero that is not the dial's. */
function zeroSlips({ value, gauge, quantity }: DialReading): Slip[] {
  const { number, divisions } = scalePlace(value, gauge);
  const below = value < 0;
  const air = fromSi(STANDARD_PRESSURE, gauge.unit);
  return [
    ...(below ? [{ value: -value, line: { say: 'slipSign' } }] : []),
    ...(below ? [{ value: tidy(number - divisions * gauge.scale.minor), line: { say: 'slipAway' } }] : []),
    ...(quantity.measures === 'vacuum' ? [{ value: -value, line: { say: 'slipMinus' } }] : []),
    ...(quantity.measures === 'gauge-pressure'
      ? [{ value: value + air, line: { say: 'slipAbsolute', with: { air: { quantity: air, unit: gauge.unit } } } }]
      : []),
  ];
}

/** What the dial's unit is taken for. */
const MISTAKEN: Partial<Record<Unit, Unit>> = { psi: 'kPa', inHg: 'kPa', kPa: 'psi' };

function unitSlips({ value, gauge: { unit } }: DialReading): Slip[] {
  const mistaken = MISTAKEN[unit];
  if (!mistaken) return [];
  return [{ value: fromSi(toSi(value, mistaken), unit), line: { say: 'slipUnit', with: { mistaken, unit } } }];
}

function swingSlips({ value, flutter }: DialReading): Slip[] {
  if (!flutter) return [];
  return [1, -1].map((end) => ({ value: tidy(value + end * flutter), line: { say: 'slipSwing' } }));
}
