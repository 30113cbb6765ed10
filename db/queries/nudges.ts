import { and, asc, count, eq, gt, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import { nudges } from '../schema';
import type { Statement } from '../together';

/** Adds a message; nothing happens when it is there. */
export function addingNudge(db: Db, nudge: typeof nudges.$inferInsert): Statement {
  return db.insert(nudges).values(nudge).onConflictDoNothing({ target: nudges.id });
}

/** Messages to somebody at an assignment that they have not read, in the order in which they were sent. */
export async function listUnreadNudges(
  db: Db,
  { assignmentId, userId }: { assignmentId: string; userId: string },
): Promise<{ id: string; text: string; sentAt: Date }[]> {
  return db
    .select({ id: nudges.id, text: nudges.text, sentAt: nudges.sentAt })
    .from(nudges)
    .where(and(eq(nudges.assignmentId, assignmentId), eq(nudges.userId, userId), isNull(nudges.readAt)))
    .orderBy(asc(nudges.sentAt), asc(nudges.id));
}

/** Notes that somebody read a message of theirs; nothing changes where they had, or where it is to somebody else. */
export function readingNudge(db: Db, { id, userId, at }: { id: string; userId: string; at: Date }): Statement {
  return db
    .update(nudges)
    .set({ readAt: at })
    .where(and(eq(nudges.id, id), eq(nudges.userId, userId), isNull(nudges.readAt)));
}

/** How many messages each person at an assignment has not read. */
export async function countUnreadNudges(db: Db, assignmentId: string): Promise<Map<string, number>> {
  const rows = await db
    .select({ userId: nudges.userId, unread: count() })
    .from(nudges)
    .where(and(eq(nudges.assignmentId, assignmentId), isNull(nudges.readAt)))
    .groupBy(nudges.userId);
  return new Map(rows.map(({ userId, unread }) => [userId, unread]));
}

/** How many messages somebody was sent at an assignment since a moment. */
export async function countNudgesSince(
  db: Db,
  { assignmentId, userId, since }: { assignmentId: string; userId: string; since: Date },
): Promise<number> {
  const [row] = await db
    .select({ sent: count() })
    .from(nudges)
    .where(and(eq(nudges.assignmentId, assignmentId), eq(nudges.userId, userId), gt(nudges.sentAt, since)));
  return row?.sent ?? 0;
}
