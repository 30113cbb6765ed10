import { z } from 'zod';
import { unitNames } from '../../../units';
import type { Slip } from '../../answer';
import type { Draw, DrawnBody } from '../../kind';
import { bytesOf, hexByte, type Parameter, parameterSchema, rawOf, scaledValue } from '../../shared/bus-parameter';
import { defineExercise } from './exercise';
import { amount, bare, only, type Sum, say, slip, sumsBody, toStep } from './sum';

const ranges = z.strictObject({
  parameters: z
    .array(
      parameterSchema.extend({
        unit: z.enum(unitNames),
        decimals: z.int().min(0),
        /** Values that make sense on an engine. */
        range: z.tuple([z.number(), z.number()]),
        /** In which values are drawn that are to be sent: each a whole number of bits. */
        step: z.number().positive(),
        topics: z.array(z.string()).min(1),
      }),
    )
    .min(2),
  ways: z.array(z.enum(['decode', 'encode'])).min(1),
});

type Ranges = z.infer<typeof ranges>;
type Asked = Ranges['parameters'][number];

export const busValue = defineExercise({
  id: 'busValue',
  topics: [
    'electrical-supply-sensors-and-codes',
    'suction-tank-and-air',
    'low-pressure-supply-and-regulation',
    'metering-and-rail-control',
    'high-pressure-and-leakage',
    'returns-and-temperature',
  ],
  ranges,
  draw(draw) {
    const { ranges, topic, stream } = draw;
    const fitting = ranges.parameters.filter(({ topics }) => topic === undefined || topics.includes(topic));
    const asked = stream('parameter').pick(fitting);
    const value = stream('value').between(...asked.range);
    return stream('way').pick(ranges.ways) === 'decode'
      ? decode(draw, asked, rawOf(asked, value))
      : encode(draw, asked, rawOf(asked, toStep(value, asked.step)));
  },
});

function decode({ ranges, rig }: Draw<Ranges>, asked: Asked, raw: number): DrawnBody {
  const value = scaledValue(asked, raw);
  const values = worded(asked, raw, rig.id);
  return sumsBody({
    stem: [
      say('busValue-scaling', only(values, 'spn', 'bytes', 'divisor', 'perBit', 'unit', 'hasOffset', 'offset')),
      say('busValue-decode', only(values, 'rig', 'bytes', 'hex')),
    ],
    sums: [
      {
        id: 'value',
        line: say('busValue-value', { unit: asked.unit }),
        units: [asked.unit],
        value,
        tolerance: toleranceOf(asked, value),
        slips: decodeSlips(asked, raw, ranges.parameters),
      },
    ],
    explanation: [
      say(asked.bytes === 2 ? 'busValue-two-bytes' : 'busValue-one-byte', values),
      say('busValue-scale', values),
    ],
    topics: asked.topics,
    features: { hexadecimal: 1, twoBytes: Number(asked.bytes === 2), offset: Number(asked.offset !== 0) },
    seconds: asked.bytes === 2 ? 90 : 60,
  });
}

function decodeSlips(asked: Asked, raw: number, all: readonly Parameter[]): Slip[] {
  const digits = bytesOf(asked, raw).map(hexByte).reverse().join('');
  const other = all.find(({ bytes, perBit }) => bytes === asked.bytes && perBit !== asked.perBit);
  return [
    ...(asked.bytes === 2 ? [slip('bytes-swapped', scaledValue(asked, swapped(raw)))] : []),
    ...(asked.offset === 0 ? [] : [slip('forgot-bus-offset', raw * asked.perBit)]),
    ...(/^\d+$/.test(digits) ? [slip('hex-as-decimal', scaledValue(asked, Number(digits)))] : []),
    ...(other ? [slip('scaling-of-another', raw * other.perBit + other.offset)] : []),
  ];
}

function encode({ rig }: Draw<Ranges>, asked: Asked, raw: number): DrawnBody {
  const values = worded(asked, raw, rig.id);
  return sumsBody({
    stem: [
      say('busValue-scaling', only(values, 'spn', 'bytes', 'divisor', 'perBit', 'unit', 'hasOffset', 'offset')),
      say('busValue-encode', only(values, 'rig', 'value')),
    ],
    sums: [rawSum(asked, raw), ...(asked.bytes === 2 ? [byteSum('first', raw), byteSum('second', raw)] : [])],
    explanation: [say('busValue-raw-step', values), ...(asked.bytes === 2 ? [say('busValue-split-step', values)] : [])],
    topics: asked.topics,
    features: { twoBytes: Number(asked.bytes === 2), offset: Number(asked.offset !== 0) },
    seconds: asked.bytes === 2 ? 120 : 60,
  });
}

function rawSum(asked: Asked, raw: number): Sum {
  const value = scaledValue(asked, raw);
  return {
    id: 'raw',
    line: say('busValue-raw'),
    units: [],
    value: raw,
    tolerance: 0.5,
    slips: [
      ...(asked.perBit === 1 ? [] : [slip('times-resolution', (value - asked.offset) * asked.perBit)]),
      ...(asked.offset === 0 ? [] : [slip('forgot-bus-offset', value / asked.perBit)]),
    ],
  };
}

/** The low byte goes first. */
function byteSum(id: 'first' | 'second', raw: number): Sum {
  const of = (number: number) => (id === 'first' ? Math.round(number) % 256 : Math.floor(Math.round(number) / 256));
  const other = id === 'first' ? Math.floor(raw / 256) : raw % 256;
  return {
    id,
    line: say(`busValue-${id}`),
    units: [],
    value: of(raw),
    tolerance: 0.5,
    slips: [slip('high-byte-first', other)],
    follows: { part: 'raw', value: of },
  };
}

function toleranceOf({ perBit, decimals }: Asked, value: number): number {
  return Math.max(0.5 * perBit, 0.5 * 10 ** -decimals, 0.001 * Math.abs(value));
}

function swapped(raw: number): number {
  return (raw % 256) * 256 + Math.floor(raw / 256);
}

function worded(asked: Asked, raw: number, rig: string) {
  const { spn, bytes, perBit, offset, unit, decimals } = asked;
  const sent = bytesOf(asked, raw);
  return {
    rig: { name: 'rig', id: rig },
    spn: String(spn),
    bytes,
    // A resolution such as 1/256 is known by its divisor.
    divisor: perBit < 1 && Number.isInteger(1 / perBit) && 1 / perBit > 100 ? 1 / perBit : 0,
    perBit: amount(perBit, unit, decimalPlaces(perBit)),
    unit,
    hasOffset: offset === 0 ? 'no' : 'yes',
    offset: amount(offset, unit, 0),
    lift: bare(-offset, 0),
    hex: sent.map(hexByte).join(' '),
    low: bare(sent[0] ?? 0, 0),
    high: bare(sent[1] ?? 0, 0),
    hexLow: hexByte(sent[0] ?? 0),
    hexHigh: hexByte(sent[1] ?? 0),
    raw: bare(raw, 0),
    value: amount(scaledValue(asked, raw), unit, decimals),
  } as const;
}

function decimalPlaces(value: number): number {
  return String(value).split('.')[1]?.length ?? 0;
}
