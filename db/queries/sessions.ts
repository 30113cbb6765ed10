import { and, desc, eq, gt, ne } from 'drizzle-orm';
import type { Db } from '../client';
import { sessions } from '../schema';
import type { Statement } from '../together';

/** Where a person is signed in. What the cookie carries is not in it. */
export type SessionLine = Omit<typeof sessions.$inferSelect, 'token' | 'userId'>;

/** A person's sessions that have not ended, the one used last first. */
export async function listSessions(db: Db, userId: string, now: Date, limit: number): Promise<SessionLine[]> {
  return db
    .select({
      id: sessions.id,
      activeOrganizationId: sessions.activeOrganizationId,
      ipAddress: sessions.ipAddress,
      userAgent: sessions.userAgent,
      expiresAt: sessions.expiresAt,
      createdAt: sessions.createdAt,
      updatedAt: sessions.updatedAt,
    })
    .from(sessions)
    .where(and(eq(sessions.userId, userId), gt(sessions.expiresAt, now)))
    .orderBy(desc(sessions.updatedAt), desc(sessions.id))
    .limit(limit);
}

/** Ends one session; nothing happens when it is somebody else's. */
export function removingSession(db: Db, { userId, sessionId }: { userId: string; sessionId: string }): Statement {
  return db.delete(sessions).where(and(eq(sessions.userId, userId), eq(sessions.id, sessionId)));
}

/** Ends all sessions of a person but one. */
export function removingOtherSessions(db: Db, { userId, sessionId }: { userId: string; sessionId: string }): Statement {
  return db.delete(sessions).where(and(eq(sessions.userId, userId), ne(sessions.id, sessionId)));
}

/** Makes an organisation the one that the session with a token works in. */
export function changingActiveOrganization(
  db: Db,
  { userId, token, organizationId }: { userId: string; token: string; organizationId: string | null },
): Statement {
  return db
    .update(sessions)
    .set({ activeOrganizationId: organizationId })
    .where(and(eq(sessions.userId, userId), eq(sessions.token, token)));
}

/** Signs somebody out everywhere. */
export function removingSessions(db: Db, userId: string): Statement {
  return db.delete(sessions).where(eq(sessions.userId, userId));
}
