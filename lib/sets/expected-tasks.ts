import type { QuestionKindId } from '../questions/question';
import { kindsOn } from '../questions/question-from-seed';
import type { QuestionsItem } from './draw-question';
import type { ExpectedTasks } from './hold-against';
import type { CaseWishes, SetItem } from './set-body';

interface Typical {
  /** Logits. */
  difficulty: number;
  /** What the expert needs at the vehicle. */
  minutes: number;
}

/**
 * Of settled cases as the generator draws them, one cause wrong: means over 160 of them, by the topic of the cause.
 * tests/unit/sets/expected-tasks.test.ts draws others and compares.
 */
const BY_TOPIC: Readonly<Record<string, Typical>> = {
  'suction-tank-and-air': { difficulty: -0.65, minutes: 24 },
  'priming-and-lift-pump': { difficulty: -0.85, minutes: 26 },
  'low-pressure-supply-and-regulation': { difficulty: -0.37, minutes: 24 },
  filtration: { difficulty: -0.55, minutes: 33 },
  'metering-and-rail-control': { difficulty: -1.13, minutes: 15 },
  'high-pressure-and-leakage': { difficulty: -1.12, minutes: 20 },
  'returns-and-temperature': { difficulty: -1.07, minutes: 32 },
  'electrical-supply-sensors-and-codes': { difficulty: -1.11, minutes: 13 },
  'fuel-quality': { difficulty: -0.71, minutes: 21 },
};
const ANY_TOPIC: Typical = { difficulty: -0.81, minutes: 23 };
/** At the hardest level, over 60 cases: where nothing is wished, with one thing wrong, with two. */
const HARDEST = {
  any: { difficulty: 1.02, minutes: 40 },
  single: { difficulty: 0.26, minutes: 40 },
  double: { difficulty: 2.01, minutes: 41 },
} as const;
/** How far cases lie from these: a band that is wished for narrows it. */
const SPREAD = 1.2;

/** What drawn cases are expected to be, by what is wished for; nothing is drawn. */
export function expectedCases({ count, wishes }: Extract<SetItem, { kind: 'cases' }>): ExpectedTasks {
  const { difficulty, minutes } = typicalOf(wishes);
  return {
    topics: wishes.topics ?? [],
    count,
    difficulty: wishes.difficulty ? middleWithin(wishes.difficulty, difficulty) : difficulty,
    minutes: Math.min(minutes, wishes.minutes ?? minutes),
  };
}

function typicalOf({ topics = [], hardest, faults }: CaseWishes): Typical {
  if (hardest) return HARDEST[faults ?? 'any'];
  const known = topics.map((id) => BY_TOPIC[id] ?? ANY_TOPIC);
  if (known.length === 0) return ANY_TOPIC;
  const mean = (of: (typical: Typical) => number) => known.reduce((sum, one) => sum + of(one), 0) / known.length;
  return { difficulty: mean((one) => one.difficulty), minutes: mean((one) => one.minutes) };
}

/** The middle of that part of a band that is commonly drawn; its end next to it where there is none. */
function middleWithin([from, to]: readonly [number, number], typical: number): number {
  const [low, high] = [Math.max(from, typical - SPREAD), Math.min(to, typical + SPREAD)];
  if (low > high) return typical < from ? from : to;
  return (low + high) / 2;
}

/** Of generated questions, by kind: how long whoever knows takes, and the middle of their design difficulty. */
const BY_KIND: Readonly<Record<QuestionKindId, { difficulty: number; seconds: number }>> = {
  'find-it': { difficulty: -1, seconds: 25 },
  'put-in-order': { difficulty: 0, seconds: 65 },
  'which-limit': { difficulty: -1, seconds: 40 },
  'read-dial': { difficulty: -0.4, seconds: 30 },
  judge: { difficulty: -0.2, seconds: 63 },
  'work-out': { difficulty: -0.4, seconds: 80 },
  'what-happens': { difficulty: 0.1, seconds: 97 },
  'what-is-left': { difficulty: 0.7, seconds: 120 },
  'next-check': { difficulty: 0, seconds: 100 },
  'which-tool': { difficulty: -0.4, seconds: 60 },
  'read-code': { difficulty: -0.3, seconds: 70 },
  'spot-hazard': { difficulty: -0.1, seconds: 48 },
  'read-trace': { difficulty: -0.2, seconds: 85 },
};

/** What drawn questions are expected to be: means over the kinds that may be drawn. Undefined where nothing is asked there. */
export function expectedQuestions({ topic, questionKind, count }: QuestionsItem): ExpectedTasks | undefined {
  const kinds = (questionKind ? [questionKind] : kindsOn(topic)).map((kind) => BY_KIND[kind]);
  if (kinds.length === 0) return undefined;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / kinds.length;
  return {
    topics: [topic],
    count,
    difficulty: mean(kinds.map(({ difficulty }) => difficulty)),
    minutes: mean(kinds.map(({ seconds }) => seconds / 60)),
  };
}
