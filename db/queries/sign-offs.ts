import { and, asc, desc, eq, gt, isNull } from 'drizzle-orm';
import type { Db } from '../client';
import { signOffs } from '../schema';
import type { Statement } from '../together';
import type { TakenBack } from './observations';

export type StoredSignOff = typeof signOffs.$inferSelect;
export type NewSignOff = Omit<StoredSignOff, 'takenBackBy' | 'takenBackAt' | 'takenBackReason'>;

/** Sign-offs of an organisation's people for a role that stand at a moment, the last to end of each person. */
export async function listStandingSignOffs(
  db: Db,
  { organizationId, profileId, at }: { organizationId: string; profileId: string; at: Date },
): Promise<{ id: string; learnerId: string; endsAt: Date }[]> {
  const rows = await db
    .select({ id: signOffs.id, learnerId: signOffs.learnerId, endsAt: signOffs.endsAt })
    .from(signOffs)
    .where(
      and(
        eq(signOffs.organizationId, organizationId),
        eq(signOffs.profileId, profileId),
        isNull(signOffs.takenBackAt),
        gt(signOffs.endsAt, at),
      ),
    )
    .orderBy(asc(signOffs.endsAt), asc(signOffs.id));
  return [...new Map(rows.map((row) => [row.learnerId, row])).values()];
}

/** Somebody's sign-offs in an organisation, the newest first; those that ended or were taken back too. */
export async function listSignOffs(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
  limit: number,
): Promise<StoredSignOff[]> {
  return db
    .select()
    .from(signOffs)
    .where(and(eq(signOffs.learnerId, learnerId), eq(signOffs.organizationId, organizationId)))
    .orderBy(desc(signOffs.signedAt), desc(signOffs.id))
    .limit(limit);
}

/** One sign-off; undefined where there is none. */
export async function findSignOff(db: Db, id: string): Promise<StoredSignOff | undefined> {
  const [row] = await db.select().from(signOffs).where(eq(signOffs.id, id));
  return row;
}

/** Adds a sign-off; changes nothing where it is there already. */
export function addingSignOff(db: Db, row: NewSignOff): Statement {
  return db.insert(signOffs).values(row).onConflictDoNothing();
}

/** Takes a sign-off back; changes nothing where it was taken back before. */
export function takingBackSignOff(db: Db, id: string, { by, at, reason }: TakenBack): Statement {
  return db
    .update(signOffs)
    .set({ takenBackBy: by, takenBackAt: at, takenBackReason: reason })
    .where(and(eq(signOffs.id, id), isNull(signOffs.takenBackAt)));
}
