import { and, eq, exists, or } from 'drizzle-orm';
import type { Db } from '../client';
import { assignedClasses, assignedPeople, assignments, classPlaces } from '../schema';

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
