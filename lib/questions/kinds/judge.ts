import type { RandomStream } from '../../random';
import { type DrawnBody, defineKind } from '../kind';
import type { Line } from '../line';
import { exact } from '../shared/exact';
import { limitWords } from '../shared/limit-words';
import { shuffledOptions } from '../shared/shuffled-options';
import { topicsOfCheck } from '../shared/topics-of-check';
import { drawJudgement } from './judge/draw-judgement';
import { explanationOf } from './judge/explanation';
import type { Judgement } from './judge/judgement';
import { choicesOf } from './judge/options';
import { judgeRanges } from './judge/ranges';

const INSTRUMENTS = 'instruments-and-uncertainty';
const TOPICS = [
  INSTRUMENTS,
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

/** Pass, fail or cannot tell, with the reason: one reading against its limit and the error of its instrument. */
export const judge = defineKind({
  id: 'judge',
  ranges: judgeRanges,
  topics: TOPICS,
  make(draw) {
    const { topic, stream, catalogue, ranges } = draw;
    const judgement = drawJudgement(draw, topic === INSTRUMENTS ? undefined : topic);
    const ofCheck = topicsOfCheck(judgement.check.id, catalogue);
    const classAlone = judgement.gauge.display === 'dial' && stream('class').next() < ranges.classAlone;
    return judgeBody(judgement, {
      classAlone,
      topics: TOPICS.filter((one) => one === INSTRUMENTS || ofCheck.includes(one)),
      shuffle: stream('shuffle'),
    });
  },
});

interface Setting {
  /** The instrument's error is not given in numbers. */
  classAlone: boolean;
  topics: readonly string[];
  shuffle: RandomStream;
}

/** The question that a judgement makes. */
export function judgeBody(judgement: Judgement, { classAlone, topics, shuffle }: Setting): DrawnBody {
  const { options, right, because } = shuffledOptions(shuffle, choicesOf(judgement));
  const { instrument, shown, gauge, line, comparison } = judgement;
  return {
    stem: stem(judgement, classAlone),
    figure: { figure: 'instrument', instrument, shown },
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: explanationOf(judgement),
    topics,
    features: {
      tooClose: Number(comparison === 'too-close'),
      classAlone: Number(classAlone),
      otherUnit: Number(gauge.unit !== line.unit),
      twoEnds: Number(line.min !== undefined && line.max !== undefined),
      offScale: Number(shown.kind === 'off-scale'),
    },
    guessFloor: Number((1 / options.length).toFixed(3)),
    steps: 1,
    seconds: classAlone ? 75 : 60,
  };
}

function stem(judgement: Judgement, classAlone: boolean): Line[] {
  const { check, quantity, condition, line } = judgement;
  return [
    {
      say: 'reading',
      with: {
        quantity: { name: 'check-quantity', id: quantity.id, of: check.id },
        condition: { name: 'condition', id: condition },
        limit: { line: limitWords(line) },
      },
    },
    errorLine(judgement, classAlone),
    { say: 'ask' },
  ];
}

function errorLine({ gauge, instrument, accuracy, readable }: Judgement, classAlone: boolean): Line {
  const named = { name: 'gauge' as const, id: instrument };
  if (classAlone) return { say: 'byClass', with: { gauge: named } };
  const numbers = { accuracy: exact(accuracy, gauge.unit), readable: exact(readable, gauge.unit) };
  return { say: accuracy === 0 ? 'byDigit' : 'byNumbers', with: { gauge: named, ...numbers } };
}
