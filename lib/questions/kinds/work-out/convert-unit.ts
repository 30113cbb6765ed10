import { z } from 'zod';
import { toSi, type Unit, unitNames } from '../../../units';
import type { Slip } from '../../answer';
import type { Draw, DrawnBody } from '../../kind';
import { defineExercise } from './exercise';
import { amount, bare, only, say, slip, sumsBody, toStep } from './sum';

const conversion = z.strictObject({
  from: z.enum(unitNames),
  to: z.enum(unitNames),
  /** In `from`, and the step in which it is drawn. */
  range: z.tuple([z.number(), z.number()]),
  step: z.number().positive(),
  /** What is measured, as the words know it. */
  what: z.string(),
  topics: z.array(z.string()).min(1),
});

const ranges = z.strictObject({
  conversions: z.array(conversion).min(1),
  /** Of the value. */
  shareTolerance: z.number().positive(),
  degreesTolerance: z.number().positive(),
});

type Ranges = z.infer<typeof ranges>;

type Conversion = z.infer<typeof conversion>;

export const convertUnit = defineExercise({
  id: 'convertUnit',
  topics: [
    'suction-tank-and-air',
    'priming-and-lift-pump',
    'low-pressure-supply-and-regulation',
    'filtration',
    'metering-and-rail-control',
    'high-pressure-and-leakage',
    'returns-and-temperature',
    'fuel-quality',
    'instruments-and-uncertainty',
  ],
  ranges,
  draw(draw) {
    const { ranges, topic, stream } = draw;
    const fitting = ranges.conversions.filter(({ topics }) => topic === undefined || topics.includes(topic));
    const chosen = stream('conversion').pick(fitting);
    const value = toStep(stream('value').between(...chosen.range), chosen.step);
    return chosen.from === '°C' || chosen.from === '°F' ? degrees(draw, chosen, value) : scaled(draw, chosen, value);
  },
});

/** Between two units that differ by a factor alone. */
function scaled({ ranges, rig }: Draw<Ranges>, { from, to, step, what, topics }: Conversion, value: number) {
  const { factor, times, big, small } = chartLine(from, to);
  const [right, inverse] = times ? [value * factor, value / factor] : [value / factor, value * factor];
  const known = isTenfold(factor);
  const values = {
    rig: { name: 'rig', id: rig.id },
    what,
    given: amount(value, from, decimalsOf(step)),
    number: bare(value, decimalsOf(step)),
    big: amount(1, big, 0),
    factor: amount(factor, small, known ? 0 : decimalsIn(factor)),
    plain: bare(factor, known ? 0 : decimalsIn(factor)),
    result: amount(right, to, decimalsIn(right)),
    times: times ? 'yes' : 'no',
  } as const;
  return body({
    stem: [
      say('convertUnit-stem', only(values, 'rig', 'what', 'given')),
      ...(known ? [] : [say('convertUnit-chart', only(values, 'big', 'factor'))]),
    ],
    sum: { to, value: right, tolerance: Math.abs(right) * ranges.shareTolerance },
    slips: [slip('inverse-factor', inverse), slip('ten-too-much', right * 10), slip('ten-too-little', right / 10)],
    explanation: [say('convertUnit-factor', values), say('convertUnit-reckon', values)],
    topics,
    features: { knownFactor: Number(known) },
  });
}

/** Temperatures, whose zeros lie apart. */
function degrees({ ranges, rig }: Draw<Ranges>, { from, to, what, topics }: Conversion, value: number) {
  const toCelsius = from === '°F';
  const right = toCelsius ? (value - 32) / 1.8 : value * 1.8 + 32;
  const slips = toCelsius
    ? [slip('forgot-32', value / 1.8), slip('order-32', value / 1.8 - 32), slip('inverse-factor', (value - 32) * 1.8)]
    : [slip('forgot-32', value * 1.8), slip('order-32', (value + 32) * 1.8), slip('inverse-factor', value / 1.8 + 32)];
  const values = {
    rig: { name: 'rig', id: rig.id },
    what,
    given: amount(value, from, 0),
    number: bare(value, 0),
    between: bare(toCelsius ? value - 32 : value * 1.8, 1),
    result: amount(right, to, 1),
    to: toCelsius ? 'celsius' : 'fahrenheit',
  } as const;
  return body({
    stem: [say('convertUnit-stem', only(values, 'rig', 'what', 'given'))],
    sum: { to, value: right, tolerance: ranges.degreesTolerance },
    slips,
    explanation: [say('convertUnit-degrees', values)],
    topics,
    features: { offset: 1 },
  });
}

interface Asked extends Pick<DrawnBody, 'stem' | 'explanation' | 'topics' | 'features'> {
  sum: { to: Unit; value: number; tolerance: number };
  slips: readonly Slip[];
}

function body({ sum: { to, value, tolerance }, slips, ...rest }: Asked): DrawnBody {
  const line = say('convertUnit-part', { unit: to });
  return sumsBody({ ...rest, sums: [{ id: 'converted', line, units: [to], value, tolerance, slips }], seconds: 45 });
}

/** How a chart puts two units: one of the larger is so many of the smaller, to four figures. */
function chartLine(from: Unit, to: Unit) {
  const ratio = toSi(1, from) / toSi(1, to);
  const times = ratio > 1;
  const factor = Number((times ? ratio : 1 / ratio).toPrecision(4));
  return { factor, times, big: times ? from : to, small: times ? to : from };
}

function isTenfold(factor: number): boolean {
  return Number.isInteger(Math.log10(factor));
}

/** Decimals for four figures, or fewer where it has no more. */
function decimalsIn(value: number): number {
  const four = Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value))));
  return Math.min(four, decimalsOf(Number(value.toPrecision(6))));
}

function decimalsOf(step: number): number {
  return String(step).split('.')[1]?.length ?? 0;
}
