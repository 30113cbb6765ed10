import { findAskedAt } from '@/db/queries/regrades';
import { findAssignmentsSet } from '@/db/queries/turn-work';
import type { Change } from '@/lib/regrading/change';
import { isPossible } from '@/lib/regrading/possible';
import { database } from '../database';

/** Whether a change of marks can be made at an assignment. */
export async function canBeMade(assignmentId: string, change: Change): Promise<boolean> {
  const found = await findAssignmentsSet(database(), assignmentId);
  if (!found) return false;
  const asked =
    change.kind === 'key' ? await findAskedAt(database(), { assignmentId, place: change.place }) : undefined;
  return isPossible(change, found.body, found.assignment.rules, asked);
}
