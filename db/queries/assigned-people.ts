import { and, asc, eq, exists, isNull, max, or } from 'drizzle-orm';
import type { Db } from '../client';
import { assignedClasses, assignedPeople, classes, classPlaces, members, users } from '../schema';
import type { Statement } from '../together';

/** Somebody whom an assignment is given to. */
export interface AssignedPerson {
  id: string;
  name: string;
  /** By name, not by a class alone. */
  named: boolean;
  /** Share of the minutes that they get on top. */
  extraTime: number;
}

/** Everybody whom an assignment is given to and who is let in, by name: through a class, or by name. */
export async function listAssigned(
  db: Db,
  { assignmentId, organizationId }: { assignmentId: string; organizationId: string },
  limit: number,
): Promise<AssignedPerson[]> {
  const byClass = db
    .select({ one: classPlaces.userId })
    .from(assignedClasses)
    .innerJoin(classPlaces, eq(classPlaces.classId, assignedClasses.classId))
    .where(and(eq(assignedClasses.assignmentId, assignmentId), eq(classPlaces.userId, users.id)));
  const rows = await db
    .select({ id: users.id, name: users.name, named: assignedPeople.named, extraTime: assignedPeople.extraTime })
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .leftJoin(
      assignedPeople,
      and(eq(assignedPeople.assignmentId, assignmentId), eq(assignedPeople.userId, members.userId)),
    )
    .where(
      and(
        eq(members.organizationId, organizationId),
        isNull(members.deactivatedAt),
        or(eq(assignedPeople.named, true), exists(byClass)),
      ),
    )
    .orderBy(asc(users.name), asc(users.id))
    .limit(limit);
  return rows.map(({ id, name, named, extraTime }) => ({
    id,
    name,
    named: named ?? false,
    extraTime: extraTime ?? 0,
  }));
}

/** The classes that an assignment is given to, by name. */
export async function listAssignedClasses(db: Db, assignmentId: string): Promise<{ id: string; name: string }[]> {
  return db
    .select({ id: classes.id, name: classes.name })
    .from(assignedClasses)
    .innerJoin(classes, eq(classes.id, assignedClasses.classId))
    .where(eq(assignedClasses.assignmentId, assignmentId))
    .orderBy(asc(classes.name), asc(classes.id));
}

/** Share of the minutes that somebody gets on top at an assignment. */
export async function findExtraTime(
  db: Db,
  { assignmentId, userId }: { assignmentId: string; userId: string },
): Promise<number> {
  const [row] = await db
    .select({ extraTime: assignedPeople.extraTime })
    .from(assignedPeople)
    .where(and(eq(assignedPeople.assignmentId, assignmentId), eq(assignedPeople.userId, userId)));
  return row?.extraTime ?? 0;
}

/** The most that anybody gets on top of the minutes at an assignment: until then its outcomes are not told. */
export async function findMostExtraTime(db: Db, assignmentId: string): Promise<number> {
  const [row] = await db
    .select({ most: max(assignedPeople.extraTime) })
    .from(assignedPeople)
    .where(eq(assignedPeople.assignmentId, assignmentId));
  return row?.most ?? 0;
}

export function addingAssignedClass(db: Db, given: typeof assignedClasses.$inferInsert): Statement {
  return db.insert(assignedClasses).values(given).onConflictDoNothing();
}

export function addingAssignedPerson(db: Db, given: typeof assignedPeople.$inferInsert): Statement {
  return db.insert(assignedPeople).values(given).onConflictDoNothing();
}

/** Gives somebody more time, whether the assignment is given to them by name or through a class. */
export function givingExtraTime(
  db: Db,
  { assignmentId, userId, extraTime }: { assignmentId: string; userId: string; extraTime: number },
): Statement {
  return db
    .insert(assignedPeople)
    .values({ assignmentId, userId, named: false, extraTime })
    .onConflictDoUpdate({ target: [assignedPeople.assignmentId, assignedPeople.userId], set: { extraTime } });
}
