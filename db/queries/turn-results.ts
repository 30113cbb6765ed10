import { and, eq, inArray, isNotNull, isNull, type SQL } from 'drizzle-orm';
import type { Db } from '../client';
import { turnResults, turns, turnTasks } from '../schema';
import type { Statement } from '../together';

export type TurnResultRow = typeof turnResults.$inferSelect;

/** Keeps what a turn came to; changes nothing where that is kept already. */
export function keepingResult(db: Db, result: TurnResultRow): Statement {
  return db.insert(turnResults).values(result).onConflictDoNothing();
}

/** Forgets what the turn came to that an attempt or a sitting is part of, so that it is made anew. */
export function forgettingResult(db: Db, work: { attemptId: string } | { sittingId: string }): Statement {
  const ids =
    'attemptId' in work
      ? db.select({ id: turnTasks.turnId }).from(turnTasks).where(eq(turnTasks.attemptId, work.attemptId))
      : db.select({ id: turns.id }).from(turns).where(eq(turns.sittingId, work.sittingId));
  return db.delete(turnResults).where(inArray(turnResults.turnId, ids));
}

/** Forgets what every turn at an assignment came to. */
export function forgettingResultsOf(db: Db, assignmentId: string): Statement {
  const ids = db.select({ id: turns.id }).from(turns).where(eq(turns.assignmentId, assignmentId));
  return db.delete(turnResults).where(inArray(turnResults.turnId, ids));
}

/** Turns of an organisation that were handed in and whose result is not kept, the oldest first. */
export async function listUnsettled(
  db: Db,
  organizationId: string,
  limit: number,
  assignmentId?: string,
): Promise<{ id: string; learnerId: string; assignmentId: string }[]> {
  const of: (SQL | undefined)[] = [
    eq(turns.organizationId, organizationId),
    isNotNull(turns.handedInAt),
    isNull(turnResults.turnId),
    assignmentId ? eq(turns.assignmentId, assignmentId) : undefined,
  ];
  return db
    .select({ id: turns.id, learnerId: turns.learnerId, assignmentId: turns.assignmentId })
    .from(turns)
    .leftJoin(turnResults, eq(turnResults.turnId, turns.id))
    .where(and(...of))
    .orderBy(turns.handedInAt, turns.id)
    .limit(limit);
}

/** What a turn came to, as it is kept; undefined where it is not. */
export async function findKeptResult(db: Db, turnId: string): Promise<TurnResultRow | undefined> {
  const [row] = await db.select().from(turnResults).where(eq(turnResults.turnId, turnId));
  return row;
}

/** What everybody's first turn at an assignment that was handed in came to, task by task. */
export async function listFirstResults(
  db: Db,
  assignmentId: string,
): Promise<{ learnerId: string; tasks: TurnResultRow['tasks'] }[]> {
  const rows = await db
    .select({ learnerId: turns.learnerId, tasks: turnResults.tasks })
    .from(turns)
    .innerJoin(turnResults, eq(turnResults.turnId, turns.id))
    .where(and(eq(turns.assignmentId, assignmentId), isNotNull(turns.handedInAt)))
    .orderBy(turns.number, turns.id);
  const met = new Set<string>();
  return rows.filter(({ learnerId }) => !met.has(learnerId) && met.add(learnerId));
}
