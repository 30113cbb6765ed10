import { and, count, desc, eq, exists, isNotNull, isNull, ne, notExists, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import {
  assignments,
  attempts,
  calls,
  comments,
  manualMarks,
  overrides,
  questionMarks,
  secondMarks,
  sittings,
  turns,
  turnTasks,
  users,
} from '../schema';

/** A piece of work as somebody who reviews needs to know it. */
export interface ReviewedRow {
  learnerId: string;
  organizationId: string;
  demo: boolean;
  /** Called, or handed in. */
  finishedAt: Date | null;
  /** Null for an attempt outside an assignment, and for questions. */
  caseCode: string | null;
  turn: typeof turns.$inferSelect | null;
  assignment: typeof assignments.$inferSelect | null;
}

/** An attempt; undefined where there is none, or it belongs to no organisation. */
export async function findReviewedAttempt(db: Db, attemptId: string): Promise<ReviewedRow | undefined> {
  const [row] = await db
    .select({ attempt: attempts, calledAt: calls.calledAt, turn: turns, assignment: assignments })
    .from(attempts)
    .leftJoin(calls, eq(calls.attemptId, attempts.id))
    .leftJoin(turnTasks, eq(turnTasks.attemptId, attempts.id))
    .leftJoin(turns, eq(turns.id, turnTasks.turnId))
    .leftJoin(assignments, eq(assignments.id, turns.assignmentId))
    .where(eq(attempts.id, attemptId));
  if (!row?.attempt.organizationId) return undefined;
  const { learnerId, organizationId, demo, caseCode } = row.attempt;
  const { turn, assignment, calledAt } = row;
  return { learnerId, organizationId, demo, caseCode, finishedAt: calledAt, turn, assignment };
}

/** A sitting; undefined where there is none. */
export async function findReviewedSitting(db: Db, sittingId: string): Promise<ReviewedRow | undefined> {
  const [row] = await db
    .select({ sitting: sittings, turn: turns, assignment: assignments })
    .from(sittings)
    .leftJoin(turns, eq(turns.sittingId, sittings.id))
    .leftJoin(assignments, eq(assignments.id, turns.assignmentId))
    .where(eq(sittings.id, sittingId));
  if (!row) return undefined;
  const { learnerId, organizationId, demo, handedInAt } = row.sitting;
  const { turn, assignment } = row;
  return { learnerId, organizationId, demo, caseCode: null, finishedAt: handedInAt, turn, assignment };
}

/** Whether somebody is at a case themselves and has not called it: another's work at it would tell them its cause. */
export async function isAtCase(db: Db, learnerId: string, caseCode: string): Promise<boolean> {
  const called = db.select({ one: sql`1` }).from(calls).where(eq(calls.attemptId, attempts.id));
  const rows = await db
    .select({ id: attempts.id })
    .from(attempts)
    .where(and(eq(attempts.learnerId, learnerId), eq(attempts.caseCode, caseCode), notExists(called)))
    .limit(1);
  return rows.length > 0;
}

/** Answers at an assignment that a person has still to mark; with a second marker also those that wait for the second mark. */
export async function countUnmarked(db: Db, assignmentId: string, secondMarker: boolean): Promise<number> {
  const at = (table: typeof manualMarks | typeof secondMarks) =>
    and(eq(table.sittingId, questionMarks.sittingId), eq(table.place, questionMarks.place));
  const noFirst = notExists(db.select({ one: sql`1` }).from(manualMarks).where(at(manualMarks)));
  const noSecond = notExists(db.select({ one: sql`1` }).from(secondMarks).where(at(secondMarks)));
  const [row] = await db
    .select({ value: count() })
    .from(turns)
    .innerJoin(questionMarks, eq(questionMarks.sittingId, turns.sittingId))
    .where(
      and(
        eq(turns.assignmentId, assignmentId),
        waitsForPerson,
        secondMarker ? sql`(${noFirst} or ${noSecond})` : noFirst,
      ),
    );
  return row?.value ?? 0;
}

/** Given, and not marked by the machine. */
export const waitsForPerson = and(
  isNotNull(questionMarks.answer),
  sql`json_extract(${questionMarks.mark}, '$.credit') is null`,
);

/** What is asked of a list of work. */
export interface WorkFilter {
  organizationId: string;
  /** Whoever reviews never sees their own. */
  reviewerId: string;
  assignmentId?: string | undefined;
  /** Nobody wrote a comment or gave points yet. */
  unseen?: boolean | undefined;
}

export interface TurnWork {
  turn: typeof turns.$inferSelect;
  assignment: typeof assignments.$inferSelect;
  /** Null once they are erased. */
  name: string | null;
  /** A comment or points are there. */
  seen: boolean;
}

/** Turns that were handed in, the last first. */
export async function listTurnsHandedIn(db: Db, filter: WorkFilter, limit: number): Promise<TurnWork[]> {
  const { organizationId, reviewerId, assignmentId, unseen } = filter;
  const seen = turnSeen(db);
  const rows = await db
    .select({ turn: turns, assignment: assignments, name: users.name, seen: sql<number>`${seen}` })
    .from(turns)
    .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
    .leftJoin(users, eq(users.id, turns.learnerId))
    .where(
      and(
        eq(turns.organizationId, organizationId),
        isNotNull(turns.handedInAt),
        ne(turns.learnerId, reviewerId),
        assignmentId ? eq(turns.assignmentId, assignmentId) : undefined,
        unseen ? sql`not ${seen}` : undefined,
      ),
    )
    .orderBy(desc(turns.handedInAt), desc(turns.id))
    .limit(limit);
  return rows.map((row) => ({ ...row, seen: Boolean(row.seen) }));
}

function turnSeen(db: Db): SQL {
  const cases = db
    .select({ one: sql`1` })
    .from(turnTasks)
    .where(
      and(
        eq(turnTasks.turnId, turns.id),
        sql`(${turnTasks.attemptId} in ${db.select({ id: comments.attemptId }).from(comments).where(isNotNull(comments.attemptId))}
          or ${turnTasks.attemptId} in ${db.select({ id: overrides.attemptId }).from(overrides).where(isNotNull(overrides.attemptId))})`,
      ),
    );
  const said = db.select({ one: sql`1` }).from(comments).where(eq(comments.sittingId, turns.sittingId));
  const given = db.select({ one: sql`1` }).from(overrides).where(eq(overrides.sittingId, turns.sittingId));
  return sql`(${exists(cases)} or ${exists(said)} or ${exists(given)})`;
}

export interface AttemptWork {
  id: string;
  caseCode: string;
  demo: boolean;
  name: string | null;
  total: number;
  calledAt: Date;
  seen: boolean;
}

/** Finished attempts outside assignments, the last first. */
export async function listFinishedAttempts(db: Db, filter: WorkFilter, limit: number): Promise<AttemptWork[]> {
  const { organizationId, reviewerId, unseen } = filter;
  const said = db.select({ one: sql`1` }).from(comments).where(eq(comments.attemptId, attempts.id));
  const given = db.select({ one: sql`1` }).from(overrides).where(eq(overrides.attemptId, attempts.id));
  const seen = sql`(${exists(said)} or ${exists(given)})`;
  const rows = await db
    .select({
      id: attempts.id,
      caseCode: attempts.caseCode,
      demo: attempts.demo,
      name: users.name,
      total: calls.total,
      calledAt: calls.calledAt,
      seen: sql<number>`${seen}`,
    })
    .from(attempts)
    .innerJoin(calls, eq(calls.attemptId, attempts.id))
    .leftJoin(turnTasks, eq(turnTasks.attemptId, attempts.id))
    .leftJoin(users, eq(users.id, attempts.learnerId))
    .where(
      and(
        eq(attempts.organizationId, organizationId),
        ne(attempts.learnerId, reviewerId),
        isNull(turnTasks.turnId),
        unseen ? sql`not ${seen}` : undefined,
      ),
    )
    .orderBy(desc(calls.calledAt), desc(attempts.id))
    .limit(limit);
  return rows.map((row) => ({ ...row, seen: Boolean(row.seen) }));
}

/** Assignments of an organisation at which a turn was handed in, the last to close first. */
export async function listAssignmentsDone(
  db: Db,
  organizationId: string,
  limit: number,
): Promise<(typeof assignments.$inferSelect)[]> {
  const done = db
    .select({ one: sql`1` })
    .from(turns)
    .where(and(eq(turns.assignmentId, assignments.id), isNotNull(turns.handedInAt)));
  return db
    .select()
    .from(assignments)
    .where(and(eq(assignments.organizationId, organizationId), exists(done)))
    .orderBy(desc(assignments.closesAt), desc(assignments.id))
    .limit(limit);
}
