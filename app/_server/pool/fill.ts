import { addingPoolTask, countPool, type NewPoolTask } from '@/db/queries/pool-tasks';
import { together } from '@/db/together';
import type { PoolUse } from '@/lib/competency/pool';
import { kindsOn } from '@/lib/questions/question-from-seed';
import { topicsInOrder } from '@/lib/topics/topic';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { log } from '../log';
import { type Making, makeCaseTask, makeQuestionTask, poolVersions } from './make-task';

/** How many there should be. */
export interface PoolSize {
  cases: number;
  questions: number;
}

/** Every so many cases, one is drawn at the hardest level, so that there is something for those who know much. */
const HARDEST_EVERY = 4;

/**
 * Fills the pool of a use up to a size with what counts under the present content: cases over all topics that have causes in
 * turn, questions over all kinds and topics in turn. Each is stored as soon as it is made.
 *
 * @returns how many were added.
 */
export async function fillPool(use: PoolUse, size: PoolSize, now: Date): Promise<PoolSize> {
  const there = await countPool(database(), use, poolVersions());
  const added = { cases: 0, questions: 0 };
  for (const task of casesFrom(there.case, size.cases, { use, at: now })) {
    await together(database(), [addingPoolTask(database(), task)]);
    added.cases++;
  }
  const questions = [...questionsFrom(there.question, size.questions, { use, at: now })];
  await together(
    database(),
    questions.map((task) => addingPoolTask(database(), task)),
  );
  return { ...added, questions: questions.length };
}

/** One case and some questions on a topic that a pool has run out of. */
export async function drawOnTheSpot(use: PoolUse, topic: string, now: Date): Promise<NewPoolTask[]> {
  const making = { use, at: now };
  const questions = kindsOn(topic).map((kind) => makeQuestionTask({ kind, topic }, making));
  const isInCases = (catalogue().topics.get(topic)?.areas.length ?? 0) > 0 || questions.length === 0;
  const made = isInCases ? makeCaseTask(areasOf(topic) ? { topics: [topic] } : {}, making) : undefined;
  const tasks = made && !('unmet' in made) ? [...questions, made] : questions;
  await together(
    database(),
    tasks.map((task) => addingPoolTask(database(), task)),
  );
  return tasks;
}

function areasOf(topic: string): boolean {
  return (catalogue().topics.get(topic)?.areas.length ?? 0) > 0;
}

function* casesFrom(first: number, until: number, making: Making): Generator<NewPoolTask> {
  const topics = topicsInOrder(catalogue()).filter(({ areas }) => areas.length > 0);
  for (let at = first; at < until; at++) {
    const topic = topics[at % topics.length]?.id ?? '';
    const hardest = Math.floor(at / topics.length) % HARDEST_EVERY === HARDEST_EVERY - 1;
    const made = makeCaseTask({ topics: [topic], ...(hardest && { hardest: true }) }, making);
    if ('unmet' in made) log.warn({ topic, hardest, unmet: made.unmet }, 'No case was found for the pool');
    else yield made;
  }
}

function* questionsFrom(first: number, until: number, making: Making): Generator<NewPoolTask> {
  const pairs = topicsInOrder(catalogue()).flatMap(({ id }) => kindsOn(id).map((kind) => ({ kind, topic: id })));
  for (let at = first; at < until; at++) {
    const pair = pairs[at % pairs.length];
    if (pair) yield makeQuestionTask(pair, making);
  }
}
