import { addingAttempt } from '@/db/queries/attempts';
import { addingIntakeTask, findIntake, holdingIntakePlace, type Intake } from '@/db/queries/intakes';
import { countingExposure, type PoolTask } from '@/db/queries/pool-tasks';
import { marking } from '@/db/queries/question-marks';
import { askingQuestion } from '@/db/queries/sitting-questions';
import { claimThen, together } from '@/db/together';
import type { TaskChoice } from '@/lib/competency/pool';
import { rulesOf } from '@/lib/readiness/sitting-rules';
import { database } from '../database';
import type { Desk } from '../permit';
import { attemptOfTask } from '../pool/attempt-of-task';
import { chooseStep } from '../pool/choose';
import { presentVersion } from '../questions/asked-question';
import { markPlace } from '../sittings/mark-place';
import { isPresent } from '../sittings/read-sitting';
import { openAt } from '../turns/turn-clock';
import { isIntakeOverdue, secondsOf } from './clock';
import { finishIntake } from './finish-intake';
import { intakeSeed, streamAt } from './intake-seed';
import { type DoneTask, readSoFar, type SoFar } from './so-far';

/** Where somebody is in a new-hire check. */
export type IntakePlace = { attemptId: string } | { sittingId: string; place: number } | 'finished';

/**
 * Goes on with a new-hire check of one's own: to the task that is open, or to the next one once that is done. A question is closed
 * with that, answered or not; a case has to be called first.
 */
export async function goOn(
  desk: Desk,
  intakeId: string,
  { now, leave }: { now: Date /** The place of the question that is left. */; leave?: number | undefined },
): Promise<IntakePlace | { error: 'not-there' | 'intake-not-open' }> {
  const intake = await findIntake(database(), desk.organizationId, intakeId);
  if (intake?.learnerId !== desk.learnerId) return { error: 'not-there' };
  if (!intake.startedAt) return { error: 'intake-not-open' };
  if (intake.finishedAt) return 'finished';
  if (isIntakeOverdue(intake, now)) {
    await finishIntake(intake, 'time', now);
    return 'finished';
  }
  const soFar = await readSoFar(desk, intake, now);
  const last = soFar.tasks.at(-1);
  if (last && !isLeft(last, soFar, leave)) return placeOf(last, intake);
  return choose(desk, intake, (await close(last, soFar, now)) ? await readSoFar(desk, intake, now) : soFar, now);
}

/** Where the task that was given last is; undefined before the first. */
export function placeOf({ attemptId, sittingPlace }: DoneTask, { sittingId }: Intake): IntakePlace {
  return attemptId ? { attemptId } : { sittingId: sittingId ?? '', place: sittingPlace ?? 0 };
}

/** Whether a task is done with: a case once it is called, a question once it is marked, or left by its place. */
function isLeft(last: DoneTask, { sitting }: SoFar, leave: number | undefined): boolean {
  if (last.attemptId) return last.done || last.gone;
  const place = sitting?.places.find((one) => one.place === last.sittingPlace);
  return place?.mark !== undefined || last.sittingPlace === leave;
}

/** Marks a question that is left, answered or not. @returns whether there was one to mark. */
async function close(last: DoneTask | undefined, { sitting }: SoFar, now: Date): Promise<boolean> {
  const asked = sitting?.places.find((one) => one.place === last?.sittingPlace);
  if (last?.attemptId !== null || !asked || asked.mark || !isPresent(asked)) return false;
  await together(database(), [marking(database(), await markPlace(asked, asked.answer, now))]);
  return true;
}

async function choose(
  desk: Desk,
  intake: Intake,
  soFar: SoFar,
  now: Date,
): Promise<IntakePlace | { error: 'not-there' | 'intake-not-open' }> {
  const place = soFar.tasks.length + 1;
  const rules = { ...rulesOf(intake.profile), seconds: secondsOf(intake) };
  const drawing = { use: 'assessed', seed: intakeSeed(intake.id), stream: streamAt(place), now } as const;
  const step = await chooseStep(soFar.state, rules, drawing);
  if ('end' in step) {
    await finishIntake(intake, step.end, now);
    return 'finished';
  }
  await store(intake, step, { place, soFar, now });
  // Another tab may have been first: what stands there counts.
  const after = (await readSoFar(desk, intake, now)).tasks.at(-1);
  return after ? placeOf(after, intake) : { error: 'not-there' };
}

async function store(
  intake: Intake,
  { task, choice }: { task: PoolTask; choice: TaskChoice },
  { place, soFar, now }: { place: number; soFar: SoFar; now: Date },
): Promise<void> {
  const db = database();
  const { id: intakeId, sittingId } = intake;
  const given = { intakeId, place, poolTaskId: task.id, choice, givenAt: now };
  const counted = countingExposure(db, task.id);
  const holding = holdingIntakePlace(db, { intakeId, place, openAt: openAt(now) });
  if (task.kind === 'case') {
    const { learnerId, organizationId, demo } = intake;
    // No key that a browser makes looks like this.
    const key = `intake ${intakeId} ${place}`;
    const attempt = attemptOfTask(task, { learnerId, organizationId, demo, key, createdAt: now });
    const added = addingIntakeTask(db, { ...given, attemptId: attempt.id, sittingPlace: null });
    await claimThen(db, holding, [addingAttempt(db, attempt), added, counted]);
    return;
  }
  const sittingPlace = (soFar.sitting?.places.length ?? 0) + 1;
  const asked = { sittingId: sittingId ?? '', place: sittingPlace, spec: task.spec, writtenVersionId: null };
  const asking = askingQuestion(db, { ...asked, seed: task.spec?.seed ?? '', ...presentVersion(), askedAt: now });
  const added = addingIntakeTask(db, { ...given, attemptId: null, sittingPlace });
  await claimThen(db, holding, [asking, added, counted]);
}
