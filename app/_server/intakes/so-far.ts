import { findAttempt } from '@/db/queries/attempts';
import { type Intake, type IntakeTask, listGivenPoolTasks, listIntakeTasks } from '@/db/queries/intakes';
import { findPoolTasks, type PoolTask } from '@/db/queries/pool-tasks';
import { evidenceOfCase } from '@/lib/competency/evidence-of-case';
import { evidenceOfQuestion } from '@/lib/competency/evidence-of-question';
import { DESIGN_SPREAD, type Derived, type Response } from '@/lib/competency/response';
import { standardRubric } from '@/lib/grading/grade-attempt';
import { afterTask, type SittingState, sittingOf } from '@/lib/readiness/sitting-state';
import { effectiveCase } from '@/lib/reviewing/effective';
import { catalogue } from '../catalogue';
import { database } from '../database';
import { isSuperseded, readHistory } from '../history';
import type { Desk } from '../permit';
import { choosable } from '../pool/choose';
import { markPlace } from '../sittings/mark-place';
import { isPresent, type ReadSitting, readSitting } from '../sittings/read-sitting';

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
    const came = one.attemptId ? await ofCase(desk, one, task) : await ofQuestion(one, sitting, task, now);
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

async function ofCase(desk: Desk, { attemptId, givenAt }: IntakeTask, task: PoolTask | undefined): Promise<Came> {
  const history = await readHistory(desk, attemptId ?? '');
  const attempt = await findAttempt(database(), desk.learnerId, attemptId ?? '');
  if (!history?.call || !attempt)
    return { done: false, gone: !attempt || isSuperseded(attempt), told: [], at: givenAt };
  const { grade, body, calledAt } = history.call;
  const { bands, safetyCap } = standardRubric(catalogue());
  const readings = history.acts.flatMap((act) => (act.kind === 'reading' ? [{ seq: act.seq, check: act.check }] : []));
  const graded = { grade, effective: effectiveCase(grade, [], safetyCap, []), readings, call: body };
  const difficulty = { logits: attempt.difficulty ?? task?.difficulty ?? 0, spread: DESIGN_SPREAD };
  const response = responseOf(`attempt ${attempt.id}`, attempt.caseCode, calledAt, {
    content: attempt.contentHash,
    generator: attempt.generatorVersion,
  });
  return {
    done: true,
    gone: false,
    told: evidenceOfCase(graded, { difficulty, bands }, response, catalogue()),
    at: calledAt,
  };
}

/** A question by its mark; one that is answered and not marked yet, by the mark that it will get. */
async function ofQuestion(
  { sittingPlace, givenAt }: IntakeTask,
  sitting: ReadSitting | undefined,
  task: PoolTask | undefined,
  now: Date,
): Promise<Came> {
  const place = sitting?.places.find((one) => one.place === sittingPlace);
  if (!place) return { done: false, gone: true, told: [], at: givenAt };
  const { mark, answer } = place;
  const marked = mark ?? (answer && isPresent(place) ? await markPlace(place, answer, now) : undefined);
  if (!marked) return { done: false, gone: false, told: [], at: givenAt };
  const { asked, markedAt } = marked;
  const graded = { asked, answered: marked.answer !== null, points: marked.mark.score };
  const difficulty = { logits: asked.difficulty ?? task?.difficulty ?? 0, spread: DESIGN_SPREAD };
  const response = responseOf(`sitting ${place.sittingId} ${place.place}`, place.seed, markedAt, {
    content: place.questionHash,
    generator: place.questionVersion,
  });
  return { done: true, gone: false, told: evidenceOfQuestion(graded, difficulty, response), at: markedAt };
}

function responseOf(work: string, exposure: string, at: Date, versions: Response['versions']): Response {
  return { work, counts: true, hints: 0, exposure, purpose: 'intake', at: at.getTime(), versions };
}
