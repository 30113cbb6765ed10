import { findTurn, handingInTurn, listOverdueTurns, type Turn } from '@/db/queries/turns';
import { together } from '@/db/together';
import { database } from '../database';
import { type Desk, deskLeft } from '../permit';
import { handIn } from '../sittings/hand-in';
import { isOverdue, openAt } from './turn-clock';

/**
 * Hands a turn in as it stands: its questions are marked, cases that were not called earn nothing. One whose time is over
 * counts as handed in when it ended.
 *
 * @returns false when there is no such turn of theirs.
 */
export async function handInTurn(desk: Desk, turnId: string, now: Date): Promise<boolean> {
  const turn = await findTurn(database(), desk.learnerId, turnId);
  if (!turn) return false;
  if (!turn.handedInAt) await handInFound(desk, turn, now);
  return true;
}

async function handInFound(desk: Desk, turn: Turn, now: Date): Promise<void> {
  const at = isOverdue(turn, now) ? turn.endsAt : now;
  // First, so that what the turn came to is worked out from questions that are marked.
  if (turn.sittingId) await handIn(desk, turn.sittingId, now);
  await together(database(), [handingInTurn(database(), desk.learnerId, { turnId: turn.id, at })]);
}

/** Hands in turns that ran out of time while nobody looked: of one person, at one assignment, or of all there are. */
export async function handInOverdueTurns(
  of: { organizationId: string; learnerId?: string; assignmentId?: string },
  now: Date,
): Promise<void> {
  for (const turn of await listOverdueTurns(database(), of, openAt(now)))
    await handInFound(deskLeft(turn.learnerId, turn.organizationId), turn, now);
}
