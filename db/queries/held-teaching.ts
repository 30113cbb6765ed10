import { and, asc, eq, inArray, or } from 'drizzle-orm';
import type { Db } from '../client';
import {
  appeals,
  assignedPeople,
  assignments,
  attempts,
  comments,
  nudges,
  overrides,
  sets,
  setVersions,
  sittings,
  turns,
} from '../schema';

/**
 * What teaching holds on a person, table by table, for them to take away: what was given to them, their turns, what was
 * written to them and their work, what they asked for, and the sets that they made. Each takes the organisation that is
 * asked about, or undefined for all of them.
 */

/** Turns at assignments, oldest first. What they were marked with stands with the attempts and the sittings. */
export async function listHeldTurns(db: Db, userId: string, organizationId?: string) {
  return db
    .select({
      turnId: turns.id,
      assignmentId: turns.assignmentId,
      title: assignments.title,
      organizationId: turns.organizationId,
      number: turns.number,
      startedAt: turns.startedAt,
      endsAt: turns.endsAt,
      handedInAt: turns.handedInAt,
    })
    .from(turns)
    .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
    .where(and(eq(turns.learnerId, userId), organizationId ? eq(turns.organizationId, organizationId) : undefined))
    .orderBy(asc(turns.startedAt), asc(turns.id));
}

/** Assignments that were given to a person by name, or with extra time. */
export async function listHeldAssigned(db: Db, userId: string, organizationId?: string) {
  return db
    .select({
      assignmentId: assignments.id,
      title: assignments.title,
      organizationId: assignments.organizationId,
      named: assignedPeople.named,
      extraTime: assignedPeople.extraTime,
    })
    .from(assignedPeople)
    .innerJoin(assignments, eq(assignments.id, assignedPeople.assignmentId))
    .where(and(eq(assignedPeople.userId, userId), ofOrganization(organizationId)))
    .orderBy(asc(assignments.createdAt), asc(assignments.id));
}

/** Short messages that a person got or sent. */
export async function listHeldNudges(db: Db, userId: string, organizationId?: string) {
  return db
    .select({
      assignmentId: nudges.assignmentId,
      to: nudges.userId,
      from: nudges.sentBy,
      text: nudges.text,
      sentAt: nudges.sentAt,
      readAt: nudges.readAt,
    })
    .from(nudges)
    .innerJoin(assignments, eq(assignments.id, nudges.assignmentId))
    .where(and(or(eq(nudges.userId, userId), eq(nudges.sentBy, userId)), ofOrganization(organizationId)))
    .orderBy(asc(nudges.sentAt), asc(nudges.id));
}

/** Comments on a person's work, and those that they wrote. */
export async function listHeldComments(db: Db, userId: string, organizationId?: string) {
  const { cases, questions } = workOf(db, userId, organizationId);
  const theirs = or(inArray(comments.attemptId, cases), inArray(comments.sittingId, questions));
  const written = organizationId ? undefined : eq(comments.writtenBy, userId);
  return db.select().from(comments).where(or(theirs, written)).orderBy(asc(comments.writtenAt), asc(comments.id));
}

/** Marks of a person's work that somebody changed, and those that they changed. */
export async function listHeldOverrides(db: Db, userId: string, organizationId?: string) {
  const { cases, questions } = workOf(db, userId, organizationId);
  const theirs = or(inArray(overrides.attemptId, cases), inArray(overrides.sittingId, questions));
  const given = organizationId ? undefined : eq(overrides.givenBy, userId);
  return db.select().from(overrides).where(or(theirs, given)).orderBy(asc(overrides.givenAt), asc(overrides.id));
}

/** Appeals that a person made or decided. */
export async function listHeldAppeals(db: Db, userId: string, organizationId?: string) {
  const inIt = organizationId ? eq(appeals.organizationId, organizationId) : undefined;
  return db
    .select()
    .from(appeals)
    .where(and(or(eq(appeals.learnerId, userId), eq(appeals.decidedBy, userId)), inIt))
    .orderBy(asc(appeals.madeAt), asc(appeals.id));
}

/** Versions of sets that a person wrote. */
export async function listHeldSetVersions(db: Db, userId: string, organizationId?: string) {
  const inIt = organizationId ? eq(sets.organizationId, organizationId) : undefined;
  return db
    .select({
      setId: setVersions.setId,
      organizationId: sets.organizationId,
      number: setVersions.number,
      changedAt: setVersions.changedAt,
      body: setVersions.body,
    })
    .from(setVersions)
    .innerJoin(sets, eq(sets.id, setVersions.setId))
    .where(and(eq(setVersions.writtenBy, userId), inIt))
    .orderBy(asc(sets.createdAt), asc(setVersions.setId), asc(setVersions.number));
}

function ofOrganization(organizationId: string | undefined) {
  return organizationId ? eq(assignments.organizationId, organizationId) : undefined;
}

function workOf(db: Db, userId: string, organizationId: string | undefined) {
  const cases = db
    .select({ id: attempts.id })
    .from(attempts)
    .where(
      and(eq(attempts.learnerId, userId), organizationId ? eq(attempts.organizationId, organizationId) : undefined),
    );
  const questions = db
    .select({ id: sittings.id })
    .from(sittings)
    .where(
      and(eq(sittings.learnerId, userId), organizationId ? eq(sittings.organizationId, organizationId) : undefined),
    );
  return { cases, questions };
}
