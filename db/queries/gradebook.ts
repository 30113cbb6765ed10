import { and, asc, desc, eq, inArray, isNull, like, lte } from 'drizzle-orm';
import type { AssignmentRules } from '../../lib/assignments/rules';
import type { Db } from '../client';
import {
  assignedClasses,
  assignedPeople,
  assignments,
  classes,
  classPlaces,
  members,
  turnResults,
  turns,
  users,
} from '../schema';

/** Those who learn in an organisation and are let in, by name. */
export async function listLearners(
  db: Db,
  organizationId: string,
  limit: number,
): Promise<{ id: string; name: string }[]> {
  return db
    .select({ id: users.id, name: users.name })
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .where(
      and(
        eq(members.organizationId, organizationId),
        isNull(members.deactivatedAt),
        // No role's name is part of another's.
        like(members.role, '%learner%'),
      ),
    )
    .orderBy(asc(users.name), asc(users.id))
    .limit(limit);
}

/** Who is in which class of an organisation. */
export async function listClassPlaces(
  db: Db,
  organizationId: string,
): Promise<{ userId: string; classId: string; name: string }[]> {
  return db
    .select({ userId: classPlaces.userId, classId: classes.id, name: classes.name })
    .from(classPlaces)
    .innerJoin(classes, eq(classes.id, classPlaces.classId))
    .where(eq(classes.organizationId, organizationId))
    .orderBy(asc(classes.name), asc(classes.id));
}

export interface BookedAssignment {
  id: string;
  title: string;
  rules: AssignmentRules;
  opensAt: Date;
  closesAt: Date;
}

/** Assignments of an organisation that have opened and are not put away: the last to close first. */
export async function listBookedAssignments(
  db: Db,
  organizationId: string,
  { now, limit }: { now: Date; limit: number },
): Promise<BookedAssignment[]> {
  return db
    .select({
      id: assignments.id,
      title: assignments.title,
      rules: assignments.rules,
      opensAt: assignments.opensAt,
      closesAt: assignments.closesAt,
    })
    .from(assignments)
    .where(
      and(
        eq(assignments.organizationId, organizationId),
        isNull(assignments.archivedAt),
        lte(assignments.opensAt, now),
      ),
    )
    .orderBy(desc(assignments.closesAt), asc(assignments.id))
    .limit(limit);
}

/** Whom assignments are given to: classes, and people by name or with extra time. */
export async function listGiven(
  db: Db,
  assignmentIds: readonly string[],
): Promise<{
  classes: { assignmentId: string; classId: string }[];
  people: { assignmentId: string; userId: string; named: boolean; extraTime: number }[];
}> {
  const ids = [...assignmentIds];
  return {
    classes: await db
      .select({ assignmentId: assignedClasses.assignmentId, classId: assignedClasses.classId })
      .from(assignedClasses)
      .where(inArray(assignedClasses.assignmentId, ids)),
    people: await db
      .select({
        assignmentId: assignedPeople.assignmentId,
        userId: assignedPeople.userId,
        named: assignedPeople.named,
        extraTime: assignedPeople.extraTime,
      })
      .from(assignedPeople)
      .where(inArray(assignedPeople.assignmentId, ids)),
  };
}

export interface BookedTurn {
  id: string;
  assignmentId: string;
  learnerId: string;
  number: number;
  handedInAt: Date | null;
  /** Null while what it came to is not settled. */
  total: number | null;
  waiting: number | null;
}

/** Every turn at some assignments, in the order of their numbers. */
export async function listBookedTurns(db: Db, assignmentIds: readonly string[]): Promise<BookedTurn[]> {
  return db
    .select({
      id: turns.id,
      assignmentId: turns.assignmentId,
      learnerId: turns.learnerId,
      number: turns.number,
      handedInAt: turns.handedInAt,
      total: turnResults.total,
      waiting: turnResults.waiting,
    })
    .from(turns)
    .leftJoin(turnResults, eq(turnResults.turnId, turns.id))
    .where(inArray(turns.assignmentId, [...assignmentIds]))
    .orderBy(asc(turns.number));
}

/** The turns of somebody at an assignment of an organisation, with what they came to; undefined for what is not there. */
export async function findTurnsAt(
  db: Db,
  { organizationId, assignmentId, personId }: { organizationId: string; assignmentId: string; personId: string },
) {
  const [found] = await db
    .select({ assignment: assignments, person: users.name })
    .from(assignments)
    .innerJoin(members, and(eq(members.organizationId, assignments.organizationId), eq(members.userId, personId)))
    .innerJoin(users, eq(users.id, members.userId))
    .where(and(eq(assignments.id, assignmentId), eq(assignments.organizationId, organizationId)));
  if (!found) return undefined;
  const rows = await db
    .select({ turn: turns, result: turnResults })
    .from(turns)
    .leftJoin(turnResults, eq(turnResults.turnId, turns.id))
    .where(and(eq(turns.assignmentId, assignmentId), eq(turns.learnerId, personId)))
    .orderBy(asc(turns.number));
  return { ...found, turns: rows };
}
