import { and, eq, like, max } from 'drizzle-orm';
import type { Db } from '../client';
import { calibrations } from '../schema';
import type { Statement } from '../together';

/** Adds accepted difficulties; of one item the last counts. */
export function addingCalibrations(db: Db, rows: (typeof calibrations.$inferInsert)[]): Statement {
  return db.insert(calibrations).values(rows);
}

/** When difficulties of a version of a set were last accepted; null when never. */
export async function findAcceptedAt(
  db: Db,
  { organizationId, setVersionId }: { organizationId: string; setVersionId: string },
): Promise<Date | null> {
  const [row] = await db
    .select({ at: max(calibrations.acceptedAt) })
    .from(calibrations)
    .where(and(eq(calibrations.organizationId, organizationId), like(calibrations.item, `${setVersionId} %`)));
  return row?.at ?? null;
}
