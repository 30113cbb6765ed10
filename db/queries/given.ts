import { and, asc, eq, exists, isNull, or, type SQL, sql } from 'drizzle-orm';
import type { SetBody } from '../../lib/sets/set-body';
import type { Db } from '../client';
import { assignedClasses, assignedPeople, assignments, classPlaces, setVersions } from '../schema';

/** Somebody at work in an organisation. */
export interface Learner {
  learnerId: string;
  organizationId: string;
}

/** An assignment as somebody has it whom it is given to. */
export interface Given {
  assignment: typeof assignments.$inferSelect;
  body: SetBody;
  /** Share of the minutes that they get on top. */
  extraTime: number;
  /** The most that anybody gets on top. */
  mostExtraTime: number;
}

/** The most that anybody gets on top of the minutes, of the assignment of a query around this one. */
export const mostExtraTime = sql<number>`(select coalesce(max(${assignedPeople.extraTime}), 0) from ${assignedPeople} where ${assignedPeople.assignmentId} = ${assignments.id})`;

/** Assignments that are given to somebody and not put away, those first that close first. */
export async function listGiven(db: Db, learner: Learner, limit: number): Promise<Given[]> {
  const given = and(isNull(assignments.archivedAt), isGiven(db, learner.learnerId));
  return selecting(db, learner)
    .where(and(isOf(learner), given))
    .orderBy(asc(assignments.closesAt), asc(assignments.id))
    .limit(limit);
}

/**
 * An assignment of the organisation for somebody, whether it is still given to them or not: the door asks that. Undefined
 * where the organisation has no such assignment.
 */
export async function findGiven(db: Db, learner: Learner, assignmentId: string): Promise<Given | undefined> {
  const [row] = await selecting(db, learner).where(and(isOf(learner), eq(assignments.id, assignmentId)));
  return row;
}

function selecting(db: Db, { learnerId }: Learner) {
  return db
    .select({
      assignment: assignments,
      body: setVersions.body,
      extraTime: sql<number>`coalesce(${assignedPeople.extraTime}, 0)`,
      mostExtraTime,
    })
    .from(assignments)
    .innerJoin(setVersions, eq(setVersions.id, assignments.setVersionId))
    .leftJoin(
      assignedPeople,
      and(eq(assignedPeople.assignmentId, assignments.id), eq(assignedPeople.userId, learnerId)),
    );
}

function isOf({ organizationId }: Learner): SQL {
  return eq(assignments.organizationId, organizationId);
}

function isGiven(db: Db, learnerId: string): SQL | undefined {
  const byClass = db
    .select({ one: classPlaces.userId })
    .from(assignedClasses)
    .innerJoin(classPlaces, eq(classPlaces.classId, assignedClasses.classId))
    .where(and(eq(assignedClasses.assignmentId, assignments.id), eq(classPlaces.userId, learnerId)));
  return or(eq(assignedPeople.named, true), exists(byClass));
}
