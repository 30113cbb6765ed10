import { and, asc, desc, eq, lte, or } from 'drizzle-orm';
import type { Db } from '../client';
import {
  acts,
  assignments,
  attempts,
  calibrations,
  calls,
  intakes,
  intakeTasks,
  manualMarks,
  observations,
  overrides,
  questionMarks,
  sittingQuestions,
  sittings,
  turns,
  turnTasks,
  writtenVersions,
} from '../schema';

/** What work was done for: a task of an assignment, a new-hire check, or neither. */
export interface DoneFor {
  assignment: typeof assignments.$inferSelect | null;
  /** Of the set's tasks. */
  taskPlace: number | null;
  intakeId: string | null;
}

/** A case that was called, with all that its points rest on; undefined where there is none. */
export async function findCaseSource(db: Db, learnerId: string, attemptId: string) {
  const [row] = await db
    .select({
      attempt: attempts,
      call: calls,
      assignment: assignments,
      taskPlace: turnTasks.place,
      intakeId: intakeTasks.intakeId,
    })
    .from(attempts)
    .innerJoin(calls, eq(calls.attemptId, attempts.id))
    .leftJoin(turnTasks, eq(turnTasks.attemptId, attempts.id))
    .leftJoin(turns, eq(turns.id, turnTasks.turnId))
    .leftJoin(assignments, eq(assignments.id, turns.assignmentId))
    .leftJoin(intakeTasks, eq(intakeTasks.attemptId, attempts.id))
    .where(and(eq(attempts.id, attemptId), eq(attempts.learnerId, learnerId)));
  if (!row) return undefined;
  const done = await db
    .select({ seq: acts.seq, body: acts.body })
    .from(acts)
    .where(eq(acts.attemptId, attemptId))
    .orderBy(asc(acts.seq));
  const given = await db
    .select()
    .from(overrides)
    .where(eq(overrides.attemptId, attemptId))
    .orderBy(asc(overrides.givenAt), asc(overrides.id));
  return { ...row, acts: done, given };
}

/** A question that was marked, with all that its points rest on; undefined where there is none. */
export async function findQuestionSource(db: Db, learnerId: string, sittingId: string, place: number) {
  const [row] = await db
    .select({
      mark: questionMarks,
      question: sittingQuestions,
      writtenId: writtenVersions.questionId,
      assignment: assignments,
      turnId: turns.id,
      intakeId: intakes.id,
    })
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .innerJoin(
      sittingQuestions,
      and(eq(sittingQuestions.sittingId, questionMarks.sittingId), eq(sittingQuestions.place, questionMarks.place)),
    )
    .leftJoin(writtenVersions, eq(writtenVersions.id, sittingQuestions.writtenVersionId))
    .leftJoin(turns, eq(turns.sittingId, sittings.id))
    .leftJoin(assignments, eq(assignments.id, turns.assignmentId))
    .leftJoin(intakes, eq(intakes.sittingId, sittings.id))
    .where(
      and(eq(questionMarks.sittingId, sittingId), eq(questionMarks.place, place), eq(sittings.learnerId, learnerId)),
    );
  if (!row) return undefined;
  const [manual] = await db
    .select({ score: manualMarks.score })
    .from(manualMarks)
    .where(and(eq(manualMarks.sittingId, sittingId), eq(manualMarks.place, place)))
    .orderBy(desc(manualMarks.seq))
    .limit(1);
  const given = await db
    .select()
    .from(overrides)
    .where(and(eq(overrides.sittingId, sittingId), eq(overrides.place, place)))
    .orderBy(asc(overrides.givenAt), asc(overrides.id));
  const taskPlace = row.turnId ? await taskPlaceOf(db, row.turnId, place) : null;
  return { ...row, taskPlace, manual: manual?.score, given };
}

async function taskPlaceOf(db: Db, turnId: string, sittingPlace: number): Promise<number | null> {
  const [row] = await db
    .select({ place: turnTasks.place })
    .from(turnTasks)
    .where(and(eq(turnTasks.turnId, turnId), eq(turnTasks.sittingPlace, sittingPlace)));
  return row?.place ?? null;
}

/** What somebody was seen doing; undefined where there is none. */
export async function findObservationSource(db: Db, learnerId: string, observationId: string) {
  const [row] = await db
    .select()
    .from(observations)
    .where(and(eq(observations.id, observationId), eq(observations.learnerId, learnerId)));
  return row;
}

/** The difficulty of one of several items that was accepted last before some moment; undefined where none was. */
export async function findAccepted(db: Db, organizationId: string, items: readonly string[], before: Date) {
  if (items.length === 0) return undefined;
  const [row] = await db
    .select({ difficulty: calibrations.difficulty, standardError: calibrations.standardError })
    .from(calibrations)
    .where(
      and(
        eq(calibrations.organizationId, organizationId),
        or(...items.map((item) => eq(calibrations.item, item))),
        lte(calibrations.acceptedAt, before),
      ),
    )
    .orderBy(desc(calibrations.acceptedAt), desc(calibrations.id))
    .limit(1);
  return row;
}
