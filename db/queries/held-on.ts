import { and, asc, eq, gt, or } from 'drizzle-orm';
import type { Db } from '../client';
import {
  accounts,
  attempts,
  classes,
  classPlaces,
  invitations,
  logEntries,
  manualMarks,
  members,
  organizations,
  pictures,
  sessions,
  sittings,
  writtenQuestions,
  writtenVersions,
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

/** Ids of a person's sittings at questions, oldest first. */
export async function listHeldSittingIds(db: Db, learnerId: string, organizationId?: string): Promise<string[]> {
  const inIt = organizationId ? eq(sittings.organizationId, organizationId) : undefined;
  const rows = await db
    .select({ id: sittings.id })
    .from(sittings)
    .where(and(eq(sittings.learnerId, learnerId), inIt))
    .orderBy(asc(sittings.createdAt), asc(sittings.id));
  return rows.map(({ id }) => id);
}

/** Versions of questions that a person wrote or reviewed, with what they say, oldest first. */
export async function listHeldVersions(db: Db, userId: string, organizationId?: string) {
  const inIt = organizationId ? eq(writtenQuestions.organizationId, organizationId) : undefined;
  return db
    .select({
      questionId: writtenVersions.questionId,
      organizationId: writtenQuestions.organizationId,
      number: writtenVersions.number,
      state: writtenVersions.state,
      writtenBy: writtenVersions.writtenBy,
      changedAt: writtenVersions.changedAt,
      reviewedBy: writtenVersions.reviewedBy,
      reviewedAt: writtenVersions.reviewedAt,
      reviewNote: writtenVersions.reviewNote,
      body: writtenVersions.body,
    })
    .from(writtenVersions)
    .innerJoin(writtenQuestions, eq(writtenQuestions.id, writtenVersions.questionId))
    .where(and(or(eq(writtenVersions.writtenBy, userId), eq(writtenVersions.reviewedBy, userId)), inIt))
    .orderBy(asc(writtenQuestions.createdAt), asc(writtenVersions.questionId), asc(writtenVersions.number));
}

/** Pictures that a person uploaded, oldest first. */
export async function listHeldPictures(db: Db, userId: string, organizationId?: string) {
  const inIt = organizationId ? eq(pictures.organizationId, organizationId) : undefined;
  return db
    .select({
      pictureId: pictures.id,
      organizationId: pictures.organizationId,
      width: pictures.width,
      height: pictures.height,
      uploadedAt: pictures.uploadedAt,
    })
    .from(pictures)
    .where(and(eq(pictures.uploadedBy, userId), inIt))
    .orderBy(asc(pictures.uploadedAt), asc(pictures.id));
}

/** Marks that a person gave for free text, oldest first. Whose text it was is not told. */
export async function listHeldMarksGiven(db: Db, userId: string, organizationId?: string) {
  const inIt = organizationId ? eq(sittings.organizationId, organizationId) : undefined;
  return db
    .select({
      organizationId: sittings.organizationId,
      score: manualMarks.score,
      comment: manualMarks.comment,
      at: manualMarks.markedAt,
    })
    .from(manualMarks)
    .innerJoin(sittings, eq(sittings.id, manualMarks.sittingId))
    .where(and(eq(manualMarks.markedBy, userId), inIt))
    .orderBy(asc(manualMarks.markedAt));
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
