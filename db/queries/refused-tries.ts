import { and, eq, lte } from 'drizzle-orm';
import type { Db } from '../client';
import { refusedTries } from '../schema';
import type { Statement } from '../together';

export type RefusedTries = typeof refusedTries.$inferSelect;

/** How often in a row something was refused; undefined when it was not. */
export async function findRefusedTries(db: Db, key: string): Promise<RefusedTries | undefined> {
  const [row] = await db.select().from(refusedTries).where(eq(refusedTries.key, key));
  return row;
}

/**
 * Counts a try. False, and nothing changed, when another came in between or when it came too early: of many at once,
 * one is let through.
 */
export async function recordTry(
  db: Db,
  before: RefusedTries | undefined,
  tried: RefusedTries,
  now: Date,
): Promise<boolean> {
  if (!before) return (await db.insert(refusedTries).values(tried).onConflictDoNothing().returning()).length > 0;
  const rows = await db
    .update(refusedTries)
    .set(tried)
    .where(and(eq(refusedTries.key, tried.key), eq(refusedTries.count, before.count), lte(refusedTries.waitUntil, now)))
    .returning();
  return rows.length > 0;
}

/** Forgets what was refused. */
export function clearingRefusedTries(db: Db, key: string): Statement {
  return db.delete(refusedTries).where(eq(refusedTries.key, key));
}
