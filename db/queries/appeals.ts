import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { appeals } from '../schema';

/** Whose an appeal is; undefined where there is none. */
export async function findAppealWork(
  db: Db,
  id: string,
): Promise<{ learnerId: string; organizationId: string } | undefined> {
  const [row] = await db
    .select({ learnerId: appeals.learnerId, organizationId: appeals.organizationId })
    .from(appeals)
    .where(eq(appeals.id, id));
  return row;
}
