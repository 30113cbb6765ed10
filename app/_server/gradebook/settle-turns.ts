import { setImmediate } from 'node:timers/promises';
import { keepingResult, listUnsettled } from '@/db/queries/turn-results';
import { together } from '@/db/together';
import { database } from '../database';
import { handInOverdueTurns } from '../turns/hand-in-turn';
import { turnResult } from './turn-result';

/** Turns whose result one request works out at most; what is left is worked out by the next. */
const AT_ONCE = 400;

/** Works out and keeps what turns came to that were handed in, or ran out of time, and are not settled yet. */
export async function settleTurns(organizationId: string, assignmentId?: string): Promise<void> {
  const db = database();
  await handInOverdueTurns({ organizationId, ...(assignmentId !== undefined && { assignmentId }) }, new Date());
  const unsettled = await listUnsettled(db, organizationId, AT_ONCE, assignmentId);
  for (const { id } of unsettled) {
    const result = await turnResult(db, id);
    if (result) await together(db, [keepingResult(db, result)]);
    await setImmediate();
  }
}
