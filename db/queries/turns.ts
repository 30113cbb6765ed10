import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { turns } from '../schema';

/** Whose a turn is; undefined where there is none. */
export async function findTurnWork(
  db: Db,
  id: string,
): Promise<{ learnerId: string; organizationId: string } | undefined> {
  const [row] = await db
    .select({ learnerId: turns.learnerId, organizationId: turns.organizationId })
    .from(turns)
    .where(eq(turns.id, id));
  return row;
}
