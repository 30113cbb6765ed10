import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { sets } from '../schema';

/** Whose a set is; undefined where there is none. */
export async function findSetsOrganization(db: Db, id: string): Promise<string | undefined> {
  const [row] = await db.select({ organizationId: sets.organizationId }).from(sets).where(eq(sets.id, id));
  return row?.organizationId;
}
