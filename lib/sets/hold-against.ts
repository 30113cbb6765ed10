import type { Blueprint } from './blueprint';

/** What some alike tasks of a set are expected to be. */
export interface ExpectedTasks {
  /** They are on one of these, each as likely; on any where there is none. */
  topics: readonly string[];
  count: number;
  /** Each. */
  minutes: number;
  /** Of each, logits. */
  difficulty: number;
}

/** A topic of a set, with what a blueprint asks of it. */
export interface TopicRow {
  /** Undefined for tasks that may be on any. */
  topic: string | undefined;
  /** Parts of a task where it may be on several topics. */
  tasks: number;
  minutes: number;
  /** Mean over its tasks, logits; undefined where it has none. */
  difficulty: number | undefined;
  /** Fewest and most; undefined without a blueprint, and for topics that it does not name. */
  asked: readonly [number, number] | undefined;
}

/** Where a set is not what its blueprint asks for. */
export type Gap =
  | { gap: 'too-few' | 'too-many'; topic: string; tasks: number; asked: readonly [number, number] }
  | { gap: 'not-asked'; topic: string; tasks: number }
  | { gap: 'too-short' | 'too-long'; minutes: number; asked: readonly [number, number] }
  | { gap: 'too-easy' | 'too-hard'; difficulty: number; asked: readonly [number, number] };

/** What a set is made of. */
export interface Holding {
  /** Topics that it has or ought to have, in the order that is given, then what may be on any. */
  rows: readonly TopicRow[];
  tasks: number;
  minutes: number;
  /** Mean over all tasks, logits; undefined without any. */
  difficulty: number | undefined;
  gaps: readonly Gap[];
}

/**
 * Topics × count × minutes × difficulty of what a set is expected to be, held against a blueprint.
 *
 * @param order  Ids of topics, in the order in which they are shown.
 */
export function holdAgainst(parts: readonly ExpectedTasks[], order: readonly string[], blueprint?: Blueprint): Holding {
  const rows = order.map((topic) => rowOf(topic, parts, blueprint)).filter(({ tasks, asked }) => tasks > 0 || asked);
  const open = parts.filter(({ topics }) => topics.length === 0);
  const anywhere = open.length > 0 ? [{ topic: undefined, ...sumOf(open, () => 1), asked: undefined }] : [];
  const whole = sumOf(parts, () => 1);
  return { rows: [...rows, ...anywhere], ...whole, gaps: blueprint ? gapsOf(rows, whole, blueprint) : [] };
}

function rowOf(topic: string, parts: readonly ExpectedTasks[], blueprint: Blueprint | undefined): TopicRow {
  const share = ({ topics }: ExpectedTasks) => (topics.includes(topic) ? 1 / topics.length : 0);
  const asked = blueprint?.topics.find((one) => one.topic === topic)?.tasks;
  return { topic, ...sumOf(parts, share), asked };
}

type Sum = Pick<Holding, 'tasks' | 'minutes' | 'difficulty'>;

function sumOf(parts: readonly ExpectedTasks[], share: (part: ExpectedTasks) => number): Sum {
  const total = (of: (part: ExpectedTasks) => number) =>
    parts.reduce((sum, part) => sum + share(part) * part.count * of(part), 0);
  const tasks = total(() => 1);
  const difficulty = tasks > 0 ? total((part) => part.difficulty) / tasks : undefined;
  return { tasks, minutes: total(({ minutes }) => minutes), difficulty };
}

/** Sums of thirds are not quite what they ought to be. */
const ROUNDING = 1e-9;

function gapsOf(rows: readonly TopicRow[], whole: Sum, blueprint: Blueprint): Gap[] {
  const { minutes, difficulty } = whole;
  const gaps: Gap[] = rows.flatMap((row) => topicGap(row));
  const long = outside(minutes, blueprint.minutes);
  if (long) gaps.push({ gap: long < 0 ? 'too-short' : 'too-long', minutes, asked: blueprint.minutes });
  const hard = difficulty === undefined ? 0 : outside(difficulty, blueprint.difficulty);
  if (difficulty !== undefined && hard)
    gaps.push({ gap: hard < 0 ? 'too-easy' : 'too-hard', difficulty, asked: blueprint.difficulty });
  return gaps;
}

function topicGap({ topic, tasks, asked }: TopicRow): Gap[] {
  if (topic === undefined) return [];
  if (!asked) return [{ gap: 'not-asked', topic, tasks }];
  const by = outside(tasks, asked);
  return by ? [{ gap: by < 0 ? 'too-few' : 'too-many', topic, tasks, asked }] : [];
}

/** -1 below a range, 1 above it, 0 within. */
function outside(value: number, [from, to]: readonly [number, number]): -1 | 0 | 1 {
  if (value < from - ROUNDING) return -1;
  return value > to + ROUNDING ? 1 : 0;
}
