import { type AnyColumn, and, eq, inArray, or, type SQL, sql } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Db } from '../client';
import {
  appeals,
  assignedPeople,
  assignments,
  attempts,
  calibrations,
  comments,
  nudges,
  overrides,
  regrades,
  secondMarks,
  sets,
  setVersions,
  sittings,
  turnResults,
  turns,
  turnTasks,
} from '../schema';
import type { Statement } from '../together';
import { NOBODY } from './leaving-questions';
import type { MemberKey } from './people';

/** Removes what was assigned to a member, their turns at it, and what others wrote to their work. Before the work itself goes. */
export function removingTurns(db: Db, member: MemberKey): Statement[] {
  const { organizationId, userId } = member;
  const own = and(eq(turns.learnerId, userId), eq(turns.organizationId, organizationId));
  const ids = db.select({ id: turns.id }).from(turns).where(own);
  const here = assignmentsOf(db, organizationId);
  return [
    ...[comments, overrides].map((table) => db.delete(table).where(isAboutWorkOf(db, table, member))),
    db.delete(appeals).where(and(eq(appeals.learnerId, userId), eq(appeals.organizationId, organizationId))),
    db.delete(secondMarks).where(inArray(secondMarks.sittingId, sittingsOf(db, member))),
    db.delete(turnTasks).where(inArray(turnTasks.turnId, ids)),
    db.delete(turnResults).where(inArray(turnResults.turnId, ids)),
    db.delete(turns).where(own),
    db.delete(nudges).where(and(eq(nudges.userId, userId), inArray(nudges.assignmentId, here))),
    db.delete(assignedPeople).where(and(eq(assignedPeople.userId, userId), inArray(assignedPeople.assignmentId, here))),
  ];
}

/** Makes what was assigned to a member, and their turns at it, somebody else's; these come after the other's own. */
export function movingTurns(db: Db, from: MemberKey, to: string): Statement[] {
  const { organizationId, userId } = from;
  const here = assignmentsOf(db, organizationId);
  const already = sql`(select coalesce(max(others.number), 0) from turns others
    where others.assignment_id = turns.assignment_id and others.learner_id = ${to})`;
  const places = db
    .select({
      assignmentId: assignedPeople.assignmentId,
      userId: sql<string>`${to}`.as('user_id'),
      named: assignedPeople.named,
      extraTime: assignedPeople.extraTime,
    })
    .from(assignedPeople)
    .where(and(eq(assignedPeople.userId, userId), inArray(assignedPeople.assignmentId, here)));
  return [
    db
      .update(turns)
      .set({ learnerId: to, number: sql`${turns.number} + ${already}` })
      .where(and(eq(turns.learnerId, userId), eq(turns.organizationId, organizationId))),
    db
      .update(appeals)
      .set({ learnerId: to })
      .where(and(eq(appeals.learnerId, userId), eq(appeals.organizationId, organizationId))),
    db
      .update(nudges)
      .set({ userId: to })
      .where(and(eq(nudges.userId, userId), inArray(nudges.assignmentId, here))),
    db.insert(assignedPeople).select(places).onConflictDoNothing(),
    db.delete(assignedPeople).where(and(eq(assignedPeople.userId, userId), inArray(assignedPeople.assignmentId, here))),
  ];
}

/** Leaves an organisation's sets, assignments, comments and changed marks without the member who made them. */
export function partingFromTeaching(db: Db, member: MemberKey, heirId: string): Statement[] {
  const { organizationId, userId } = member;
  const unshared = and(
    eq(sets.organizationId, organizationId),
    eq(sets.createdBy, userId),
    sql`${sets.sharedAt} is null`,
  );
  // A set that nobody else sees would be lost with its name.
  return [db.update(sets).set({ createdBy: heirId }).where(unshared), ...renamingTeaching(db, member, NOBODY)];
}

/** Puts another name to all that a member made in teaching. */
export function renamingTeaching(db: Db, { organizationId, userId }: MemberKey, to: string): Statement[] {
  const ownSets = db.select({ id: sets.id }).from(sets).where(eq(sets.organizationId, organizationId));
  const here = assignmentsOf(db, organizationId);
  const rename = (table: SQLiteTable, field: string, column: AnyColumn, where: SQL | undefined): Statement =>
    db
      .update(table)
      .set({ [field]: to })
      .where(and(eq(column, userId), where));
  return [
    rename(sets, 'createdBy', sets.createdBy, eq(sets.organizationId, organizationId)),
    rename(setVersions, 'writtenBy', setVersions.writtenBy, inArray(setVersions.setId, ownSets)),
    rename(assignments, 'createdBy', assignments.createdBy, eq(assignments.organizationId, organizationId)),
    rename(nudges, 'sentBy', nudges.sentBy, inArray(nudges.assignmentId, here)),
    rename(comments, 'writtenBy', comments.writtenBy, isAboutWorkAt(db, comments, organizationId)),
    rename(overrides, 'givenBy', overrides.givenBy, isAboutWorkAt(db, overrides, organizationId)),
    rename(appeals, 'decidedBy', appeals.decidedBy, eq(appeals.organizationId, organizationId)),
    rename(
      secondMarks,
      'markedBy',
      secondMarks.markedBy,
      inArray(secondMarks.sittingId, sittingsAt(db, organizationId)),
    ),
    rename(regrades, 'madeBy', regrades.madeBy, inArray(regrades.assignmentId, here)),
    rename(regrades, 'undoneBy', regrades.undoneBy, inArray(regrades.assignmentId, here)),
    rename(calibrations, 'acceptedBy', calibrations.acceptedBy, eq(calibrations.organizationId, organizationId)),
  ];
}

type AboutWork = typeof comments | typeof overrides;

function isAboutWorkOf(db: Db, table: AboutWork, { organizationId, userId }: MemberKey): SQL | undefined {
  const own = and(eq(attempts.learnerId, userId), eq(attempts.organizationId, organizationId));
  const cases = db.select({ id: attempts.id }).from(attempts).where(own);
  return or(inArray(table.attemptId, cases), inArray(table.sittingId, sittingsOf(db, { organizationId, userId })));
}

function isAboutWorkAt(db: Db, table: AboutWork, organizationId: string): SQL | undefined {
  const cases = db.select({ id: attempts.id }).from(attempts).where(eq(attempts.organizationId, organizationId));
  return or(inArray(table.attemptId, cases), inArray(table.sittingId, sittingsAt(db, organizationId)));
}

function assignmentsOf(db: Db, organizationId: string) {
  return db.select({ id: assignments.id }).from(assignments).where(eq(assignments.organizationId, organizationId));
}

function sittingsAt(db: Db, organizationId: string) {
  return db.select({ id: sittings.id }).from(sittings).where(eq(sittings.organizationId, organizationId));
}

function sittingsOf(db: Db, { organizationId, userId }: MemberKey) {
  const own = and(eq(sittings.learnerId, userId), eq(sittings.organizationId, organizationId));
  return db.select({ id: sittings.id }).from(sittings).where(own);
}
