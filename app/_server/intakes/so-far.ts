import { questionWork } from '@/db/queries/evidence-due';
import { type Intake, type IntakeTask, listGivenPoolTasks, listIntakeTasks } from '@/db/queries/intakes';
import { findPoolTasks, type PoolTask } from '@/db/queries/pool-tasks';
import type { Derived } from '@/lib/competency/response';
import { afterTask, type SittingState, sittingOf } from '@/lib/readiness/sitting-state';
import { database } from '../database';
import { deriveEvidence } from '../evidence/derive';
import { isSuperseded, readHistory } from '../history';
import type { Desk } from '../permit';
import { choosable } from '../pool/choose';
import { type ReadSitting, readSitting } from '../sittings/read-sitting';

/** A task of a new-hire check with what it told. */
export interface DoneTask extends IntakeTask {
  /** Undefined where the pool was emptied since. */
  task: PoolTask | undefined;
  /** Whether something was called or answered. */
  done: boolean;
  /** Content has moved since: nothing can be done in it any more. */
  gone: boolean;
  told: readonly Derived[];
  /** When it was called or answered, or given where it was not. */
  at: Date;
}

export interface SoFar {
  tasks: readonly DoneTask[];
  sitting: ReadSitting | undefined;
  state: SittingState;
}

/** What a new-hire check has come to, worked out from what was done in it alone. */
export async function readSoFar(desk: Desk, intake: Intake, now: Date): Promise<SoFar> {
  const db = database();
  const given = await listIntakeTasks(db, intake.id);
  const rows = new Map(
    (
      await findPoolTasks(
        db,
        given.map(({ poolTaskId }) => poolTaskId),
      )
    ).map((row) => [row.id, row]),
  );
  const sitting = intake.sittingId ? await readSitting(desk, intake.sittingId) : undefined;
  const tasks: DoneTask[] = [];
  for (const one of given) {
    const task = rows.get(one.poolTaskId);
    const came = one.attemptId ? await ofCase(desk, one) : await ofQuestion(desk, one, sitting);
    tasks.push({ ...one, task, ...came });
  }
  return { tasks, sitting, state: stateAfter(tasks, await listGivenPoolTasks(db, desk.learnerId), intake, now) };
}

function stateAfter(tasks: readonly DoneTask[], met: readonly string[], intake: Intake, now: Date): SittingState {
  const begun = intake.startedAt ?? now;
  const seconds = (at: Date) => (at.getTime() - begun.getTime()) / 1000;
  const state = tasks.reduce(
    (before, { task, told, at }) => (task ? afterTask(before, choosable(task), told, seconds(at)) : before),
    sittingOf(met),
  );
  return { ...state, elapsed: seconds(now) };
}

type Came = Pick<DoneTask, 'done' | 'gone' | 'told' | 'at'>;

async function ofCase(desk: Desk, { attemptId, givenAt }: IntakeTask): Promise<Came> {
  const history = await readHistory(desk, attemptId ?? '');
  if (!history) return { done: false, gone: true, told: [], at: givenAt };
  const { call, attempt } = history;
  if (!call) return { done: false, gone: isSuperseded(attempt), told: [], at: givenAt };
  const told = await deriveEvidence(database(), desk.learnerId, `attempt ${attempt.id}`);
  return { done: true, gone: false, told, at: call.calledAt };
}

/** A question tells something once it is marked, which is when it is left. */
async function ofQuestion(
  desk: Desk,
  { sittingPlace, givenAt }: IntakeTask,
  sitting: ReadSitting | undefined,
): Promise<Came> {
  const place = sitting?.places.find((one) => one.place === sittingPlace);
  if (!place?.mark) return { done: false, gone: !place, told: [], at: givenAt };
  const told = await deriveEvidence(database(), desk.learnerId, questionWork(place.sittingId, place.place));
  return { done: true, gone: false, told, at: place.mark.markedAt };
}
