import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { classes, classPlaces } from '../schema';
import type { Statement } from '../together';

export type Class = typeof classes.$inferSelect;

/** A class, whoever's it is: the door compares its organisation. Undefined when there is none. */
export async function findClass(db: Db, classId: string): Promise<Class | undefined> {
  const [row] = await db.select().from(classes).where(eq(classes.id, classId));
  return row;
}

/** Gives a person a place in a class; nothing happens when they have one. */
export function addingClassPlace(db: Db, place: typeof classPlaces.$inferInsert): Statement {
  return db.insert(classPlaces).values(place).onConflictDoNothing();
}
