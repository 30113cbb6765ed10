import { and, asc, eq, gt, or } from 'drizzle-orm';
import type { Db } from '../client';
import {
  accounts,
  attempts,
  classes,
  classPlaces,
  invitations,
  logEntries,
  members,
  organizations,
  sessions,
} from '../schema';

/**
 * What the database holds on a person, table by table, for them to take away. Each takes the organisation that is asked
 * about, or undefined for all of them.
 */

/** When a person's password or PIN was set; undefined when they have none. */
export async function findSecretSetAt(db: Db, userId: string): Promise<Date | undefined> {
  const [row] = await db
    .select({ at: accounts.updatedAt })
    .from(accounts)
    .where(and(eq(accounts.userId, userId), eq(accounts.providerId, 'credential')));
  return row?.at;
}

export async function listHeldMemberships(db: Db, userId: string, organizationId?: string) {
  return db
    .select({
      organizationId: members.organizationId,
      organization: organizations.name,
      role: members.role,
      since: members.createdAt,
      deactivatedAt: members.deactivatedAt,
      erasureAskedAt: members.erasureAskedAt,
    })
    .from(members)
    .innerJoin(organizations, eq(organizations.id, members.organizationId))
    .where(and(eq(members.userId, userId), organizationId ? eq(members.organizationId, organizationId) : undefined))
    .orderBy(asc(members.createdAt), asc(members.id));
}

export async function listHeldClassPlaces(db: Db, userId: string, organizationId?: string) {
  return db
    .select({
      classId: classes.id,
      name: classes.name,
      organizationId: classes.organizationId,
      joinedAt: classPlaces.joinedAt,
    })
    .from(classPlaces)
    .innerJoin(classes, eq(classes.id, classPlaces.classId))
    .where(and(eq(classPlaces.userId, userId), organizationId ? eq(classes.organizationId, organizationId) : undefined))
    .orderBy(asc(classPlaces.joinedAt), asc(classes.id));
}

/** Sessions that stand in the database, ended or not; of one organisation those that work in it. Without their tokens. */
export async function listHeldSessions(db: Db, userId: string, organizationId?: string) {
  const inIt = organizationId ? eq(sessions.activeOrganizationId, organizationId) : undefined;
  return db
    .select({
      sessionId: sessions.id,
      organizationId: sessions.activeOrganizationId,
      address: sessions.ipAddress,
      device: sessions.userAgent,
      signedInAt: sessions.createdAt,
      lastUsedAt: sessions.updatedAt,
      endsAt: sessions.expiresAt,
    })
    .from(sessions)
    .where(and(eq(sessions.userId, userId), inIt))
    .orderBy(asc(sessions.createdAt), asc(sessions.id));
}

/** Invitations that a person made or that were sent to their address. Whom others were sent to is not told. */
export async function listHeldInvitations(
  db: Db,
  { userId, address }: { userId: string; address: string },
  organizationId?: string,
) {
  const inIt = organizationId ? eq(invitations.organizationId, organizationId) : undefined;
  return db
    .select({
      invitationId: invitations.id,
      organizationId: invitations.organizationId,
      inviterId: invitations.inviterId,
      role: invitations.role,
      status: invitations.status,
      classId: invitations.classId,
      madeAt: invitations.createdAt,
      endsAt: invitations.expiresAt,
    })
    .from(invitations)
    .where(and(or(eq(invitations.inviterId, userId), eq(invitations.email, address)), inIt))
    .orderBy(asc(invitations.createdAt), asc(invitations.id));
}

/** Ids of a person's attempts, oldest first. */
export async function listHeldAttemptIds(db: Db, learnerId: string, organizationId?: string): Promise<string[]> {
  const inIt = organizationId ? eq(attempts.organizationId, organizationId) : undefined;
  const rows = await db
    .select({ id: attempts.id })
    .from(attempts)
    .where(and(eq(attempts.learnerId, learnerId), inIt))
    .orderBy(asc(attempts.createdAt), asc(attempts.id));
  return rows.map(({ id }) => id);
}

/** What the log says of a person or by them, oldest first, after the entry with a `seq`. */
export async function listHeldLogEntries(
  db: Db,
  userId: string,
  { organizationId, after, limit }: { organizationId?: string | undefined; after: number; limit: number },
) {
  const inIt = organizationId ? eq(logEntries.organizationId, organizationId) : undefined;
  return db
    .select()
    .from(logEntries)
    .where(and(or(eq(logEntries.personId, userId), eq(logEntries.actorId, userId)), gt(logEntries.seq, after), inIt))
    .orderBy(asc(logEntries.seq))
    .limit(limit);
}
