import { and, eq, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import { presentations } from '../schema';
import type { Statement } from '../together';

export type PresentationRow = typeof presentations.$inferSelect;

/** A showing by its id; undefined where there is none. */
export async function findPresentation(db: Db, id: string): Promise<PresentationRow | undefined> {
  const [row] = await db.select().from(presentations).where(eq(presentations.id, id));
  return row;
}

/** Stores a showing; changes nothing where the certificate has been shown for that number already. */
export function addingPresentation(db: Db, row: Omit<PresentationRow, 'usedAt'>): Statement {
  return db
    .insert(presentations)
    .values({ ...row, usedAt: null })
    .onConflictDoNothing();
}

/** Uses a showing up; changes nothing where somebody has. */
export function usingPresentation(db: Db, id: string, at: Date): Statement {
  return db
    .update(presentations)
    .set({ usedAt: at })
    .where(and(eq(presentations.id, id), isNull(presentations.usedAt)));
}
