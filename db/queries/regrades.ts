import { eq } from 'drizzle-orm';
import type { Db } from '../client';
import { assignments, regrades } from '../schema';

/** Whose a change of marks is; undefined where there is none. */
export async function findRegradesOrganization(db: Db, id: string): Promise<string | undefined> {
  const [row] = await db
    .select({ organizationId: assignments.organizationId })
    .from(regrades)
    .innerJoin(assignments, eq(assignments.id, regrades.assignmentId))
    .where(eq(regrades.id, id));
  return row?.organizationId;
}
