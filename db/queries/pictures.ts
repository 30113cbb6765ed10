import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { pictures } from '../schema';
import type { Statement } from '../together';

export type Picture = typeof pictures.$inferSelect;

/** A picture, whoever's it is: the door compares its organisation. Undefined when there is none. */
export async function findPicture(db: Db, pictureId: string): Promise<Picture | undefined> {
  const [row] = await db.select().from(pictures).where(eq(pictures.id, pictureId));
  return row;
}

export function addingPicture(db: Db, made: typeof pictures.$inferInsert): Statement {
  return db.insert(pictures).values(made);
}
