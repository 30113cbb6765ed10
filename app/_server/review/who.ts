import { createHmac } from 'node:crypto';
import { cache } from 'react';
import { findMostExtraTime } from '@/db/queries/assigned-people';
import { listNames } from '@/db/queries/names';
import { countUnmarked, type ReviewedRow } from '@/db/queries/review-work';
import { takenUntil, toldAt } from '@/lib/assignments/phase';
import { handleFrom } from '@/lib/reviewing/handle';
import { showsNames } from '@/lib/reviewing/naming';
import { database } from '../database';
import { secret } from '../secret';
import { GRACE } from '../sittings/read-sitting';

export type Assigned = NonNullable<ReviewedRow['assignment']>;
/** As much of an assignment as says whom it names and what it tells. */
type Telling = Pick<Assigned, 'id' | 'rules' | 'opensAt' | 'closesAt'>;

/** Whose work it is, as far as whoever reviews may know. */
export type Who = { name: string | null } | { handle: string };

/** What somebody is called at an assignment while no name may stand there: the same at every sight of their work. */
export function handleOf(assignmentId: string, learnerId: string): string {
  const digest = createHmac('sha256', secret()).update(`handle ${assignmentId} ${learnerId}`).digest();
  return handleFrom(digest);
}

/** Whether work of an assignment is shown with names at a moment. Without an assignment it always is. */
export async function isNamed(assignment: Telling | null, now: Date): Promise<boolean> {
  if (!assignment?.rules.anonymous) return true;
  return namedAt(assignment.id, assignment, now.getTime());
}

const namedAt = cache(async (_id: string, assignment: Telling, now: number): Promise<boolean> => {
  const { id, rules } = assignment;
  const most = await findMostExtraTime(database(), id);
  const unmarked = await countUnmarked(database(), id, rules.secondMarker);
  return showsNames(rules.anonymous, { endsAt: takenUntil(assignment, most), unmarked }, now);
});

/** Whether outcomes of an assignment are told to learners at a moment. Without an assignment they always are. */
export async function isTold(assignment: Telling | null, now: Date): Promise<boolean> {
  if (!assignment) return true;
  const at = toldAt(assignment, await findMostExtraTime(database(), assignment.id));
  // What was on its way when the last turn ended is taken first.
  return now.getTime() >= at + (assignment.rules.mode === 'assessed' ? GRACE : 0);
}

export async function whoIs(
  { learnerId, organizationId, assignment }: Pick<ReviewedRow, 'learnerId' | 'organizationId' | 'assignment'>,
  now: Date,
): Promise<Who> {
  if (assignment && !(await isNamed(assignment, now))) return { handle: handleOf(assignment.id, learnerId) };
  const [found] = await listNames(database(), organizationId, [learnerId]);
  return { name: found?.name ?? null };
}
