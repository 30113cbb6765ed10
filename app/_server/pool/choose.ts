import { addingPoolTask, listPool, type PoolTask } from '@/db/queries/pool-tasks';
import { together } from '@/db/together';
import type { PoolUse, TaskChoice } from '@/lib/competency/pool';
import { randomStream } from '@/lib/random';
import { nextStep, type SittingEnd, topicsRunDry } from '@/lib/readiness/sitting';
import { type SittingPool, type SittingTask, sittingPool } from '@/lib/readiness/sitting-pool';
import type { SittingRules } from '@/lib/readiness/sitting-rules';
import type { SittingState } from '@/lib/readiness/sitting-state';
import { database } from '../database';
import { drawOnTheSpot } from './fill';
import { makeCaseTask, poolVersions } from './make-task';

/** A task of the pool as a sitting looks at it. */
export interface Choosable extends SittingTask {
  row: PoolTask;
}

export interface Choosing {
  use: PoolUse;
  /** Draws one of the best, together with the name of the stream. */
  seed: string;
  stream: string;
  now: Date;
}

/** Topics that something is drawn on at once where the pool has run dry: each takes a second. */
const AT_ONCE = 2;

/** What a sitting gives next from the pool, or why it ends. Where the pool has nothing left on a topic, something is drawn on the spot. */
export async function chooseStep(
  state: SittingState,
  rules: SittingRules,
  { use, seed, stream, now }: Choosing,
): Promise<{ task: PoolTask; choice: TaskChoice } | { end: SittingEnd }> {
  const pool = await poolWith(state, rules, use, now);
  const step = nextStep(state, pool, rules, randomStream(seed, stream));
  return 'end' in step ? step : { task: step.task.row, choice: { ...step.choice, stream } };
}

async function poolWith(
  state: SittingState,
  rules: SittingRules,
  use: PoolUse,
  now: Date,
): Promise<SittingPool<Choosable>> {
  const pool = await readPool(rules, use);
  const dry = topicsRunDry(state, pool, rules).slice(0, AT_ONCE);
  for (const topic of dry) await drawOnTheSpot(use, topic, now);
  const owed = rules.cases > state.given.filter(({ kind }) => kind === 'case').length;
  const caseLeft = pool.tasks.some(({ task }) => task.kind === 'case' && !state.met.has(task.exposure));
  const short = owed && !caseLeft;
  if (short) await drawCase(use, now);
  return dry.length > 0 || short ? readPool(rules, use) : pool;
}

async function readPool(rules: SittingRules, use: PoolUse): Promise<SittingPool<Choosable>> {
  return sittingPool((await listPool(database(), use, poolVersions())).map(choosable), rules);
}

async function drawCase(use: PoolUse, at: Date): Promise<void> {
  const made = makeCaseTask({}, { use, at });
  if (!('unmet' in made)) await together(database(), [addingPoolTask(database(), made)]);
}

/** A row as a sitting looks at it: a task of the pool is drawn from a seed of its own, so that its id names the exposure. */
export function choosable(row: PoolTask): Choosable {
  const { id, kind, topics, seconds, exposures, spec } = row;
  return { id, kind, topics, seconds, exposures, exposure: id, family: spec?.kind ?? id, row };
}
