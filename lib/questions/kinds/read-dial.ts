import type { Measurand } from '../../gauges/gauge';
import { dimensionOf, type Unit } from '../../units';
import { type DrawnBody, defineKind } from '../kind';
import type { Line } from '../line';
import { exact, exactNumber } from '../shared/exact';
import { topicsOfCheck } from '../shared/topics-of-check';
import { type DialReading, drawReading } from './read-dial/draw-reading';
import { readDialRanges } from './read-dial/ranges';
import { scalePlace, tidy } from './read-dial/scale-place';
import { readingSlips } from './read-dial/slips';

const INSTRUMENTS = 'instruments-and-uncertainty';
const TOPICS = [
  INSTRUMENTS,
  'suction-tank-and-air',
  'priming-and-lift-pump',
  'low-pressure-supply-and-regulation',
  'filtration',
  'high-pressure-and-leakage',
  'returns-and-temperature',
];

/** An analogue gauge or a graduated glass, read between its marks. */
export const readDial = defineKind({
  id: 'read-dial',
  ranges: readDialRanges,
  topics: TOPICS,
  make(draw) {
    const reading = drawReading(draw);
    const checks = topicsOfCheck(reading.check.id, draw.catalogue);
    return body(
      reading,
      TOPICS.filter((topic) => topic === INSTRUMENTS || checks.includes(topic)),
    );
  },
});

function body(reading: DialReading, topics: readonly string[]): DrawnBody {
  const { gauge, quantity, value, flutter } = reading;
  const { scale, range, unit } = gauge;
  // By eye a scale is told apart to half a division. Common practice; the step that `resolution` of a dial stands for too.
  const tolerance = scale.minor / 2;
  const shown = { kind: 'value' as const, quantity: quantity.id, value, unit, ...(flutter && { flutter }) };
  return {
    stem: stem(reading),
    figure: { figure: 'instrument', instrument: gauge.id, shown },
    answer: {
      form: 'numbers',
      parts: [
        { id: 'reading', line: { say: 'part', with: { kind: kindOf(quantity.measures) } }, units: unitsFor(unit) },
      ],
    },
    key: { form: 'numbers', parts: { reading: { value, tolerance, slips: readingSlips(reading, tolerance) } } },
    explanation: explanation(reading, tolerance),
    topics,
    features: {
      between: Number(scalePlace(value, gauge).divisions % 1 !== 0),
      swings: Number(flutter !== undefined),
      belowZero: Number(value < 0),
      oddStep: Number(scale.minor !== 1 && scale.minor !== 10),
    },
    guessFloor: Number((scale.minor / (range.max - range.min)).toFixed(3)),
    steps: 1,
    seconds: 30,
  };
}

/** As a code that words can be chosen by. */
function kindOf(measures: Measurand): string {
  return measures === 'pressure-drop' ? 'drop' : measures;
}

function stem({ check, quantity, gauge, flutter }: DialReading): Line[] {
  return [
    {
      say: 'stem',
      with: {
        gauge: { name: 'gauge', id: gauge.id },
        quantity: { name: 'check-quantity', id: quantity.id, of: check.id },
      },
    },
    { say: flutter ? 'askMiddle' : 'ask', with: { display: gauge.display } },
    ...(gauge.range.min < 0 ? [{ say: 'minus' }] : []),
  ];
}

function explanation({ gauge, value, flutter }: DialReading, tolerance: number): Line[] {
  const { scale, unit, display } = gauge;
  const { number, divisions } = scalePlace(value, gauge);
  const [least, most] = [tidy(value - tolerance), tidy(value + tolerance)];
  return [
    {
      say: 'scale',
      with: {
        major: exact(scale.major, unit),
        count: Math.round(scale.major / scale.minor),
        minor: exact(scale.minor, unit),
        majorNumber: exactNumber(scale.major),
      },
    },
    {
      say: 'place',
      with: {
        display,
        number: exactNumber(number),
        count: divisions === 1 ? 'one' : 'more',
        divisions: exactNumber(divisions),
        minor: exactNumber(scale.minor),
        value: exact(value, unit),
      },
    },
    ...(flutter
      ? [
          {
            say: 'middle',
            with: {
              low: exactNumber(tidy(value - flutter)),
              high: exact(tidy(value + flutter), unit),
              value: exact(value, unit),
            },
          },
        ]
      : []),
    { say: 'near', with: { least: exactNumber(least), most: exact(most, unit), half: exact(tolerance, unit) } },
  ];
}

const UNITS: Partial<Record<ReturnType<typeof dimensionOf>, readonly Unit[]>> = {
  pressure: ['kPa', 'psi', 'bar', 'inHg'],
  flow: ['mL/min', 'L/min'],
};

/** The dial's own unit first: it is what stands on the dial. */
function unitsFor(unit: Unit): readonly Unit[] {
  return [unit, ...(UNITS[dimensionOf(unit)] ?? []).filter((other) => other !== unit)];
}
