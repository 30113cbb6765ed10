import { and, asc, eq, isNotNull, isNull } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { Change } from '../../lib/regrading/change';
import type { Db } from '../client';
import { assignments, questionMarks, regrades, turnResults, turns, turnTasks, users } from '../schema';
import type { Statement } from '../together';
import { owingAssignment } from './evidence-due';
import { forgettingResultsOf } from './turn-results';

/** Whose a change of marks is; undefined where there is none. */
export async function findRegradesOrganization(db: Db, id: string): Promise<string | undefined> {
  const [row] = await db
    .select({ organizationId: assignments.organizationId })
    .from(regrades)
    .innerJoin(assignments, eq(assignments.id, regrades.assignmentId))
    .where(eq(regrades.id, id));
  return row?.organizationId;
}

export interface RegradeLine {
  id: string;
  change: Change;
  reason: string;
  madeAt: Date;
  /** Null once they are erased. */
  maker: string | null;
  undoneAt: Date | null;
  undoer: string | null;
}

/** Every change of the marks of an assignment, undone or not, oldest first. */
export async function listRegrades(db: Db, assignmentId: string): Promise<RegradeLine[]> {
  const undoers = alias(users, 'undoers');
  return db
    .select({
      id: regrades.id,
      change: regrades.change,
      reason: regrades.reason,
      madeAt: regrades.madeAt,
      maker: users.name,
      undoneAt: regrades.undoneAt,
      undoer: undoers.name,
    })
    .from(regrades)
    .leftJoin(users, eq(users.id, regrades.madeBy))
    .leftJoin(undoers, eq(undoers.id, regrades.undoneBy))
    .where(eq(regrades.assignmentId, assignmentId))
    .orderBy(asc(regrades.madeAt), asc(regrades.id));
}

/** Adds a change of marks once, by its id. What turns came to is to be forgotten with it, and the evidence owed. */
export function addingRegrade(
  db: Db,
  regrade: Pick<typeof regrades.$inferInsert, 'id' | 'assignmentId' | 'change' | 'reason' | 'madeBy' | 'madeAt'>,
): { claim: Statement; others: Statement[] } {
  return {
    claim: db.insert(regrades).values(regrade).onConflictDoNothing(),
    others: [
      forgettingResultsOf(db, regrade.assignmentId),
      ...owingAssignment(db, regrade.assignmentId, regrade.madeAt),
    ],
  };
}

/** Takes a change back that still counts. */
export function undoingRegrade(
  db: Db,
  { id, assignmentId, undoneBy, undoneAt }: { id: string; assignmentId: string; undoneBy: string; undoneAt: Date },
): { claim: Statement; others: Statement[] } {
  return {
    claim: db
      .update(regrades)
      .set({ undoneBy, undoneAt })
      .where(and(eq(regrades.id, id), eq(regrades.assignmentId, assignmentId), isNull(regrades.undoneAt))),
    others: [forgettingResultsOf(db, assignmentId), ...owingAssignment(db, assignmentId, undoneAt)],
  };
}

/** The assignment of a change of marks; undefined where there is none. */
export async function findRegradesAssignment(db: Db, id: string): Promise<string | undefined> {
  const [row] = await db.select({ id: regrades.assignmentId }).from(regrades).where(eq(regrades.id, id));
  return row?.id;
}

/** Turns at an assignment that were handed in, with what they came to where that is kept. */
export async function listHandedIn(
  db: Db,
  assignmentId: string,
): Promise<{ turnId: string; learnerId: string; name: string | null; total: number | null }[]> {
  return db
    .select({ turnId: turns.id, learnerId: turns.learnerId, name: users.name, total: turnResults.total })
    .from(turns)
    .leftJoin(turnResults, eq(turnResults.turnId, turns.id))
    .leftJoin(users, eq(users.id, turns.learnerId))
    .where(and(eq(turns.assignmentId, assignmentId), isNotNull(turns.handedInAt)))
    .orderBy(asc(turns.handedInAt), asc(turns.id));
}

/** A question that was marked at a task of an assignment; undefined where none was yet. */
export async function findAskedAt(db: Db, { assignmentId, place }: { assignmentId: string; place: number }) {
  const [row] = await db
    .select({ asked: questionMarks.asked })
    .from(turns)
    .innerJoin(turnTasks, and(eq(turnTasks.turnId, turns.id), eq(turnTasks.place, place)))
    .innerJoin(
      questionMarks,
      and(eq(questionMarks.sittingId, turns.sittingId), eq(questionMarks.place, turnTasks.sittingPlace)),
    )
    .where(eq(turns.assignmentId, assignmentId))
    .limit(1);
  return row?.asked;
}
