import { type DrawnBody, defineKind } from '../kind';
import type { Line, Value } from '../line';
import { exact } from '../shared/exact';
import { limitWords } from '../shared/limit-words';
import { shuffledOptions } from '../shared/shuffled-options';
import { topicsOfCheck } from '../shared/topics-of-check';
import { choicesOf } from './which-limit/choices';
import { drawTaken, type Taken } from './which-limit/draw-taken';
import { measuredWords } from './which-limit/lines';
import { neighboursOf } from './which-limit/neighbours';
import { whichLimitRanges } from './which-limit/ranges';
import { sheetFor } from './which-limit/sheet';

const TOPICS = [
  'flow-path-and-components',
  'suction-tank-and-air',
  'priming-and-lift-pump',
  'low-pressure-supply-and-regulation',
  'filtration',
  'metering-and-rail-control',
  'high-pressure-and-leakage',
  'returns-and-temperature',
  'electrical-supply-sensors-and-codes',
  'fuel-quality',
];

/** Which line of the limit sheet a reading is to be held against, or that there is none. */
export const whichLimit = defineKind({
  id: 'which-limit',
  ranges: whichLimitRanges,
  topics: TOPICS,
  make(draw): DrawnBody {
    const { rig, catalogue, ranges, stream } = draw;
    const taken = drawTaken(draw, draw.topic);
    const neighbours = neighboursOf(rig, taken, catalogue, stream('neighbours'));
    const offered = stream('offered').next() < ranges.noLineOffered;
    const choices = choicesOf(taken, neighbours, { offered, stream: stream('wrong') });
    const { options, right, because } = shuffledOptions(stream('shuffle'), choices);
    const ofCheck = topicsOfCheck(taken.check.id, catalogue);
    return {
      stem: [reading(taken), { say: 'ask' }],
      figure: sheetFor(rig, taken, neighbours, catalogue),
      answer: { form: 'choice', options },
      key: { form: 'choice', right, because },
      explanation: explanation(taken),
      topics: TOPICS.filter((topic) => ofCheck.includes(topic)),
      features: {
        noLine: Number(!taken.line),
        noLineOffered: Number(offered && taken.line !== undefined),
        otherConditions: Number(taken.elsewhere.length > 0),
        manyQuantities: Number(taken.check.quantities.length > 1),
      },
      guessFloor: Number((1 / options.length).toFixed(3)),
      steps: 1,
      seconds: 40,
    };
  },
});

function reading({ check, quantity, condition, instrument, value, unit }: Taken): Line {
  return {
    say: 'reading',
    with: {
      quantity: { name: 'check-quantity', id: quantity.id, of: check.id },
      condition: conditionName(condition),
      gauge: { name: 'gauge', id: instrument },
      value: exact(value, unit),
    },
  };
}

function explanation({ check, quantity, condition, line, value, unit, elsewhere }: Taken): Line[] {
  const measured = { line: measuredWords(check, quantity.id) };
  const here = { condition: conditionName(condition), value: exact(value, unit) };
  const others = elsewhere.map((other) => conditionName(other.condition));
  return [
    line
      ? { say: 'applies', with: { measured, ...here, limit: { line: limitWords(line) } } }
      : { say: 'none', with: { measured, ...here, others: { list: others } } },
    ...elsewhere
      .filter((other) => differs(value, other.value))
      .slice(0, 1)
      .map((other) => ({
        say: 'differs',
        with: { ...here, other: conditionName(other.condition), there: exact(other.value, unit) },
      })),
  ];
}

/** By enough for one limit not to do for both. */
function differs(value: number, other: number): boolean {
  return Math.abs(value - other) > 0.2 * Math.max(Math.abs(value), Math.abs(other));
}

function conditionName(id: string): Value {
  return { name: 'condition', id };
}
