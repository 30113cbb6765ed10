import { createHmac } from 'node:crypto';
import { addingAttempt, findStarted } from '@/db/queries/attempts';
import { listEvidence } from '@/db/queries/evidence';
import { countingExposure, listPool, type PoolTask } from '@/db/queries/pool-tasks';
import { claimThen, together } from '@/db/together';
import { type NextPractice, nextPractice, type Standpoint } from '@/lib/competency/next-practice';
import { neutralPrior, posteriorFrom } from '@/lib/competency/posterior';
import { responseOf } from '@/lib/competency/states';
import { agedTo, emptyTally, tallyOf } from '@/lib/competency/tally';
import { randomStream } from '@/lib/random';
import { topicsInOrder } from '@/lib/topics/topic';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { readProgress } from '../evidence/read-progress';
import { readSettings } from '../organization-settings';
import type { Desk } from '../permit';
import { secret } from '../secret';
import { storeSitting } from '../sittings/start-sitting';
import { attemptOfTask } from './attempt-of-task';
import { type Choosable, choosable } from './choose';
import { poolVersions } from './make-task';

/** Tasks of one family lie so many responses apart. Assumed. */
const APART = 3;

/**
 * What somebody is to practise next, and why; undefined where the pool holds nothing new to them. Drawn from a stream that only more
 * evidence moves, so that it stays the same until something more is shown, and the same log gives it again.
 */
export async function readNext(desk: Desk, now: Date): Promise<NextPractice<Choosable> | undefined> {
  const pool = await listPool(database(), 'practice', poolVersions());
  if (pool.length === 0) return undefined;
  const standpoints = await standpointsOf(desk, now);
  const exposures = (await listEvidence(database(), desk)).map(({ exposure }) => exposure);
  const met = new Set(exposures);
  const fresh = pool.filter((row) => !met.has(exposureOf(row))).map(choosable);
  const lately = new Set([...met].slice(0, APART).map(familyOf));
  const seed = createHmac('sha256', secret()).update(`next ${desk.learnerId}`).digest('hex').slice(0, 20);
  return nextPractice(fresh, standpoints, lately, randomStream(seed, `next after ${exposures.length}`));
}

/** Starts what is to be practised next, or finds what was started. @returns where it is. */
export async function startNext(desk: Desk, now: Date): Promise<string | undefined> {
  const next = await readNext(desk, now);
  if (!next) return undefined;
  const { row } = next.task;
  return row.kind === 'case' ? startCase(desk, row, now) : startQuestion(desk, row, next.topic, now);
}

async function startCase(desk: Desk, row: PoolTask, now: Date): Promise<string | undefined> {
  const { learnerId, organizationId } = desk;
  const key = `next ${row.id}`;
  const attempt = attemptOfTask(row, { learnerId, organizationId, key, createdAt: now });
  await claimThen(database(), addingAttempt(database(), attempt), [countingExposure(database(), row.id)]);
  const started = await findStarted(database(), learnerId, key);
  return started && `/learn/cases/${started.id}`;
}

async function startQuestion(desk: Desk, row: PoolTask, topic: string, now: Date): Promise<string | undefined> {
  const { spec } = row;
  if (!spec) return undefined;
  const wish = { desk, key: `next ${row.id}`, at: now };
  const places = [{ spec, writtenVersionId: null, seed: spec.seed }];
  const id = await storeSitting(wish, { mode: 'drill', topics: [topic] }, () => places);
  await together(database(), [countingExposure(database(), row.id)]);
  return id && `/learn/sittings/${id}`;
}

/** Where they stand on each topic, from what they may be told of. */
async function standpointsOf(desk: Desk, now: Date): Promise<Map<string, Standpoint>> {
  const { evidenceHalfLifeDays } = await readSettings(desk.organizationId);
  const progress = await readProgress(database(), desk, { now, by: 'learner' });
  return new Map(
    topicsInOrder(catalogue()).map(({ id }) => {
      const one = progress.get(id);
      const tally = one ? tallyOf(one.shown.map(responseOf), evidenceHalfLifeDays) : emptyTally;
      const posterior = posteriorFrom(neutralPrior, agedTo(tally, now.getTime(), evidenceHalfLifeDays));
      return [id, { posterior, responses: one?.responses ?? 0, fades: one ? one.before !== null : false }];
    }),
  );
}

/** As the log of evidence names it. */
function exposureOf({ caseCode, spec }: PoolTask): string {
  if (!spec) return `case ${caseCode}`;
  return `question ${[spec.kind, spec.rig ?? '', spec.topic ?? '', spec.seed].join(' ')}`;
}

/** The kind of a question that was met; a case is like no other. */
function familyOf(exposure: string): string {
  const [source, kind] = exposure.split(' ');
  return source === 'question' && kind ? kind : exposure;
}
