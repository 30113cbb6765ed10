import { and, asc, count, eq, gt, isNull, like, notExists, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { classes, classPlaces, members, users } from '../schema';
import type { Statement } from '../together';

export type Class = typeof classes.$inferSelect;
type ClassKey = Pick<Class, 'id' | 'organizationId'>;

/** A class, whoever's it is: the door compares its organisation. Undefined when there is none. */
export async function findClass(db: Db, classId: string): Promise<Class | undefined> {
  const [row] = await db.select().from(classes).where(eq(classes.id, classId));
  return row;
}

/** The class that a code lets in to; undefined when it is closed or archived, or the code has ended. */
export async function findClassByJoinCode(db: Db, code: string, now: Date): Promise<Class | undefined> {
  const [row] = await db
    .select()
    .from(classes)
    .where(and(eq(classes.joinCode, code), gt(classes.joinCodeEndsAt, now), isNull(classes.archivedAt)));
  return row;
}

export interface ClassLine {
  id: string;
  name: string;
  archivedAt: Date | null;
  people: number;
}

/** The classes of an organisation, those that go on first, by name. */
export async function listClasses(db: Db, organizationId: string, limit: number): Promise<ClassLine[]> {
  return db
    .select({
      id: classes.id,
      name: classes.name,
      archivedAt: classes.archivedAt,
      people: sql<number>`(${db.select({ value: count() }).from(classPlaces).where(eq(classPlaces.classId, classes.id))})`,
    })
    .from(classes)
    .where(eq(classes.organizationId, organizationId))
    .orderBy(sql`${classes.archivedAt} is not null`, asc(classes.name), asc(classes.id))
    .limit(limit);
}

/** The classes of an organisation that go on, by name, with their clocks. */
export async function listClassClocks(
  db: Db,
  organizationId: string,
  limit: number,
): Promise<Pick<Class, 'id' | 'name' | 'timeZone'>[]> {
  return db
    .select({ id: classes.id, name: classes.name, timeZone: classes.timeZone })
    .from(classes)
    .where(and(eq(classes.organizationId, organizationId), isNull(classes.archivedAt)))
    .orderBy(asc(classes.name), asc(classes.id))
    .limit(limit);
}

export interface ClassPerson {
  id: string;
  name: string;
  address: string;
  role: string;
  deactivatedAt: Date | null;
}

/** Who is in a class, by name. */
export async function listClassPeople(db: Db, { id, organizationId }: ClassKey, limit: number): Promise<ClassPerson[]> {
  return db
    .select(person)
    .from(classPlaces)
    .innerJoin(users, eq(users.id, classPlaces.userId))
    .innerJoin(members, and(eq(members.userId, users.id), eq(members.organizationId, organizationId)))
    .where(eq(classPlaces.classId, id))
    .orderBy(asc(users.name), asc(users.id))
    .limit(limit);
}

/** Learners of the class's organisation who have no place in it, by name. */
export async function listWithoutPlace(
  db: Db,
  { id, organizationId }: ClassKey,
  limit: number,
): Promise<ClassPerson[]> {
  const placed = db
    .select({ one: sql`1` })
    .from(classPlaces)
    .where(and(eq(classPlaces.classId, id), eq(classPlaces.userId, users.id)));
  return db
    .select(person)
    .from(members)
    .innerJoin(users, eq(users.id, members.userId))
    .where(
      and(
        eq(members.organizationId, organizationId),
        isNull(members.deactivatedAt),
        // No other role has the word in it.
        like(members.role, '%learner%'),
        notExists(placed),
      ),
    )
    .orderBy(asc(users.name), asc(users.id))
    .limit(limit);
}

const person = {
  id: users.id,
  name: users.name,
  address: users.email,
  role: members.role,
  deactivatedAt: members.deactivatedAt,
};

/** Adds a class; nothing happens when it is there. */
export function addingClass(db: Db, made: typeof classes.$inferInsert): Statement {
  return db.insert(classes).values(made).onConflictDoNothing({ target: classes.id });
}

/** Changes what is given of a class. */
export function changingClass(
  db: Db,
  classId: string,
  changes: Partial<Pick<Class, 'name' | 'timeZone' | 'joinCode' | 'joinCodeEndsAt' | 'archivedAt'>>,
): Statement {
  return db.update(classes).set(changes).where(eq(classes.id, classId));
}

/** Gives a person a place in a class; nothing happens when they have one. */
export function addingClassPlace(db: Db, place: typeof classPlaces.$inferInsert): Statement {
  return db.insert(classPlaces).values(place).onConflictDoNothing();
}

/** Takes a person's place in a class. */
export function removingClassPlace(db: Db, { classId, userId }: { classId: string; userId: string }): Statement {
  return db.delete(classPlaces).where(and(eq(classPlaces.classId, classId), eq(classPlaces.userId, userId)));
}

/** Whether the organisation of a class is that one, and the class goes on. */
export async function isOpenClassOf(db: Db, organizationId: string, classId: string): Promise<boolean> {
  const [row] = await db
    .select({ id: classes.id })
    .from(classes)
    .where(and(eq(classes.id, classId), eq(classes.organizationId, organizationId), isNull(classes.archivedAt)));
  return row !== undefined;
}
