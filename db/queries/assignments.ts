import { and, asc, countDistinct, desc, eq, exists, isNotNull, isNull, max, or, sql } from 'drizzle-orm';
import type { SetBody } from '../../lib/sets/set-body';
import type { Db } from '../client';
import { assignedClasses, assignedPeople, assignments, classPlaces, setVersions, turns } from '../schema';
import type { Statement } from '../together';

/** Whose an assignment is; undefined where there is none. */
export async function findAssignmentsOrganization(db: Db, id: string): Promise<string | undefined> {
  const [row] = await db
    .select({ organizationId: assignments.organizationId })
    .from(assignments)
    .where(eq(assignments.id, id));
  return row?.organizationId;
}

/** Whether an assignment is given to somebody: by name, or to a class that they are in. */
export async function isGivenTo(
  db: Db,
  { assignmentId, organizationId, userId }: { assignmentId: string; organizationId: string; userId: string },
): Promise<boolean> {
  const byName = db
    .select({ one: assignedPeople.userId })
    .from(assignedPeople)
    .where(
      and(
        eq(assignedPeople.assignmentId, assignments.id),
        eq(assignedPeople.userId, userId),
        eq(assignedPeople.named, true),
      ),
    );
  const byClass = db
    .select({ one: classPlaces.userId })
    .from(assignedClasses)
    .innerJoin(classPlaces, eq(classPlaces.classId, assignedClasses.classId))
    .where(and(eq(assignedClasses.assignmentId, assignments.id), eq(classPlaces.userId, userId)));
  const rows = await db
    .select({ id: assignments.id })
    .from(assignments)
    .where(
      and(
        eq(assignments.id, assignmentId),
        eq(assignments.organizationId, organizationId),
        or(exists(byName), exists(byClass)),
      ),
    );
  return rows.length > 0;
}

export type Assignment = typeof assignments.$inferSelect;

/** An assignment with the version that it gives. */
export interface GivenSet extends Assignment {
  setId: string;
  version: number;
  body: SetBody;
}

/** Undefined where the organisation has no such assignment. */
export async function findAssignment(
  db: Db,
  { assignmentId, organizationId }: { assignmentId: string; organizationId: string },
): Promise<GivenSet | undefined> {
  const [row] = await db
    .select({ assignment: assignments, setId: setVersions.setId, version: setVersions.number, body: setVersions.body })
    .from(assignments)
    .innerJoin(setVersions, eq(setVersions.id, assignments.setVersionId))
    .where(and(eq(assignments.id, assignmentId), eq(assignments.organizationId, organizationId)));
  return row && { ...row.assignment, setId: row.setId, version: row.version, body: row.body };
}

export interface AssignmentLine
  extends Pick<Assignment, 'id' | 'title' | 'rules' | 'opensAt' | 'closesAt' | 'archivedAt' | 'demo'> {
  /** People who have begun, and who have handed in at least one turn. */
  begun: number;
  handedIn: number;
  /** The most that anybody gets on top of the minutes. */
  mostExtraTime: number;
}

/** Assignments of an organisation: those not put away first, the last to close first. */
export async function listAssignments(db: Db, organizationId: string, limit: number): Promise<AssignmentLine[]> {
  const handedIn = sql`case when ${turns.handedInAt} is not null then ${turns.learnerId} end`;
  const work = db
    .select({
      assignmentId: turns.assignmentId,
      begun: countDistinct(turns.learnerId).as('begun'),
      handedIn: countDistinct(handedIn).as('handed_in'),
    })
    .from(turns)
    .where(eq(turns.organizationId, organizationId))
    .groupBy(turns.assignmentId)
    .as('work');
  const extra = db
    .select({ assignmentId: assignedPeople.assignmentId, most: max(assignedPeople.extraTime).as('most') })
    .from(assignedPeople)
    .groupBy(assignedPeople.assignmentId)
    .as('extra');
  return db
    .select({
      id: assignments.id,
      title: assignments.title,
      rules: assignments.rules,
      opensAt: assignments.opensAt,
      closesAt: assignments.closesAt,
      archivedAt: assignments.archivedAt,
      demo: assignments.demo,
      begun: sql<number>`coalesce(${work.begun}, 0)`,
      handedIn: sql<number>`coalesce(${work.handedIn}, 0)`,
      mostExtraTime: sql<number>`coalesce(${extra.most}, 0)`,
    })
    .from(assignments)
    .leftJoin(work, eq(work.assignmentId, assignments.id))
    .leftJoin(extra, eq(extra.assignmentId, assignments.id))
    .where(eq(assignments.organizationId, organizationId))
    .orderBy(sql`${assignments.archivedAt} is not null`, desc(assignments.closesAt), asc(assignments.id))
    .limit(limit);
}

/** Adds an assignment; nothing happens when it is there. */
export function addingAssignment(db: Db, made: typeof assignments.$inferInsert): Statement {
  return db.insert(assignments).values(made).onConflictDoNothing({ target: assignments.id });
}

/** Moves when an assignment opens and closes, unless that was moved by somebody else meanwhile. */
export function movingDates(
  db: Db,
  { id, opensAt, closesAt }: Pick<Assignment, 'id' | 'opensAt' | 'closesAt'>,
  to: Pick<Assignment, 'rules' | 'opensAt' | 'closesAt'>,
): Statement {
  return db
    .update(assignments)
    .set(to)
    .where(and(eq(assignments.id, id), eq(assignments.opensAt, opensAt), eq(assignments.closesAt, closesAt)));
}

/** Puts an assignment away, or takes it out again; nothing changes where it is so already. */
export function archivingAssignment(db: Db, id: string, archivedAt: Date | null): Statement {
  const isSo = archivedAt ? isNull(assignments.archivedAt) : isNotNull(assignments.archivedAt);
  return db
    .update(assignments)
    .set({ archivedAt })
    .where(and(eq(assignments.id, id), isSo));
}
