import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import {
  assignedPeople,
  assignments,
  attempts,
  calls,
  manualMarks,
  overrides,
  questionMarks,
  regrades,
  setVersions,
  sittingQuestions,
  turns,
  turnTasks,
} from '../schema';

/** A turn with what it was at and under which rules; undefined where there is none. */
export async function findTurnWithRules(db: Db, turnId: string) {
  const [row] = await db
    .select({ turn: turns, assignment: assignments, body: setVersions.body, extraTime: assignedPeople.extraTime })
    .from(turns)
    .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
    .innerJoin(setVersions, eq(setVersions.id, assignments.setVersionId))
    .leftJoin(
      assignedPeople,
      and(eq(assignedPeople.assignmentId, turns.assignmentId), eq(assignedPeople.userId, turns.learnerId)),
    )
    .where(eq(turns.id, turnId));
  return row;
}

/** What stands at the places of a turn. */
export async function listTurnTasks(db: Db, turnId: string): Promise<(typeof turnTasks.$inferSelect)[]> {
  return db.select().from(turnTasks).where(eq(turnTasks.turnId, turnId)).orderBy(asc(turnTasks.place));
}

/** The cases of a turn, with their calls and grades where they were called. */
export async function listTurnCases(db: Db, turnId: string) {
  return db
    .select({ place: turnTasks.place, attemptId: attempts.id, startedAt: attempts.createdAt, call: calls })
    .from(turnTasks)
    .innerJoin(attempts, eq(attempts.id, turnTasks.attemptId))
    .leftJoin(calls, eq(calls.attemptId, attempts.id))
    .where(eq(turnTasks.turnId, turnId));
}

/** The marks of a sitting, and what people gave for free text, each place's last last. */
export async function listMarkedPlaces(db: Db, sittingId: string) {
  const marks = await db
    .select({ mark: questionMarks, askedAt: sittingQuestions.askedAt })
    .from(questionMarks)
    .innerJoin(
      sittingQuestions,
      and(eq(sittingQuestions.sittingId, questionMarks.sittingId), eq(sittingQuestions.place, questionMarks.place)),
    )
    .where(eq(questionMarks.sittingId, sittingId));
  const given = await db
    .select({ place: manualMarks.place, score: manualMarks.score })
    .from(manualMarks)
    .where(eq(manualMarks.sittingId, sittingId))
    .orderBy(asc(manualMarks.seq));
  return { marks, given };
}

/** Points that people gave in the place of computed ones, oldest first. */
export async function listOverrides(
  db: Db,
  { attemptIds, sittingId }: { attemptIds: readonly string[]; sittingId: string | null },
): Promise<(typeof overrides.$inferSelect)[]> {
  const ofCases =
    attemptIds.length > 0
      ? await db
          .select()
          .from(overrides)
          .where(inArray(overrides.attemptId, [...attemptIds]))
          .orderBy(asc(overrides.givenAt), asc(overrides.id))
      : [];
  const ofQuestions = sittingId
    ? await db
        .select()
        .from(overrides)
        .where(eq(overrides.sittingId, sittingId))
        .orderBy(asc(overrides.givenAt), asc(overrides.id))
    : [];
  return [...ofCases, ...ofQuestions];
}

/** Changes of the marks of an assignment that were not undone, oldest first. */
export async function listChanges(db: Db, assignmentId: string): Promise<(typeof regrades.$inferSelect)[]> {
  return db
    .select()
    .from(regrades)
    .where(and(eq(regrades.assignmentId, assignmentId), isNull(regrades.undoneAt)))
    .orderBy(asc(regrades.madeAt), asc(regrades.id));
}

/** An assignment with what its set consists of; undefined where there is none. */
export async function findAssignmentsSet(db: Db, assignmentId: string) {
  const [row] = await db
    .select({ assignment: assignments, body: setVersions.body })
    .from(assignments)
    .innerJoin(setVersions, eq(setVersions.id, assignments.setVersionId))
    .where(eq(assignments.id, assignmentId));
  return row;
}
