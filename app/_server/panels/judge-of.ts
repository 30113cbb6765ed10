import { isJudge, type Panel } from '@/db/queries/panels';
import { database } from '../database';
import type { SignedInPermit } from '../permit';

/** Whether somebody sees a panel's tasks with their answers: its judges, as long as they do not learn here themselves. */
export async function judgesIn({ session }: SignedInPermit, { id }: Pick<Panel, 'id'>): Promise<boolean> {
  const { personId, roles } = session.actor;
  return !roles.includes('learner') && (await isJudge(database(), id, personId));
}
