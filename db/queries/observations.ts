import { and, desc, eq, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import { observations } from '../schema';
import { followedBy, type Statement } from '../together';
import { owingObservation } from './evidence-due';

export type StoredObservation = typeof observations.$inferSelect;
export type NewObservation = Omit<StoredObservation, 'takenBackBy' | 'takenBackAt' | 'takenBackReason'>;

/** What somebody was seen doing in an organisation, the newest first; those taken back too. */
export async function listObservations(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
  limit: number,
): Promise<StoredObservation[]> {
  return db
    .select()
    .from(observations)
    .where(and(eq(observations.learnerId, learnerId), eq(observations.organizationId, organizationId)))
    .orderBy(desc(observations.observedAt), desc(observations.writtenAt), desc(observations.id))
    .limit(limit);
}

/** One hands-on check; undefined where there is none. */
export async function findObservation(db: Db, id: string): Promise<StoredObservation | undefined> {
  const [row] = await db.select().from(observations).where(eq(observations.id, id));
  return row;
}

/** Adds a hands-on check, and owes its evidence; changes nothing where it is there already. */
export function addingObservation(db: Db, row: NewObservation): Statement {
  const added = db.insert(observations).values(row).onConflictDoNothing();
  return followedBy(added, [owingObservation(db, row.id, row.writtenAt)]);
}

export interface TakenBack {
  by: string;
  at: Date;
  reason: string;
}

/** Takes a hands-on check back, and owes its evidence; changes nothing where it was taken back before. */
export function takingBackObservation(db: Db, id: string, { by, at, reason }: TakenBack): Statement {
  const taken = db
    .update(observations)
    .set({ takenBackBy: by, takenBackAt: at, takenBackReason: reason })
    .where(and(eq(observations.id, id), isNull(observations.takenBackAt)));
  return followedBy(taken, [owingObservation(db, id, at)]);
}
