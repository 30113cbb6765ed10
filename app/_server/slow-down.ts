import { createHash } from 'node:crypto';
import { clearingRefusedTries, findRefusedTries, recordTry } from '@/db/queries/refused-tries';
import { type Statement, together } from '@/db/together';
import { waitingSeconds } from '@/lib/accounts/waiting-time';
import { database } from './database';

/** What was refused is forgotten after this long without a try. */
const FORGOTTEN_MS = 24 * 60 * 60 * 1000;

/** What tries are counted by: somebody's sign-in name, or the address that links and codes are tried from. */
export type Tried = `name:${string}` | `links:${string}` | 'set-up';

/**
 * Counts a try before it is made, so that many at once gain nothing.
 *
 * @returns the whole minutes to wait, at least one, when it may not be made now; undefined when it may.
 */
export async function countTry(tried: Tried, now = new Date()): Promise<number | undefined> {
  const key = keyOf(tried);
  const found = await findRefusedTries(database(), key);
  if (found && found.waitUntil > now) return minutesUntil(found.waitUntil, now);
  const forgotten = found && found.waitUntil.getTime() + FORGOTTEN_MS < now.getTime();
  const count = (forgotten ? 0 : (found?.count ?? 0)) + 1;
  const waitUntil = new Date(now.getTime() + waitingSeconds(count) * 1000);
  return (await recordTry(database(), found, { key, count, waitUntil }, now)) ? undefined : 1;
}

/** Forgets what was refused, because a try was right. */
export async function forgetTries(tried: Tried): Promise<void> {
  await together(database(), [forgettingTries(tried)]);
}

export function forgettingTries(tried: Tried): Statement {
  return clearingRefusedTries(database(), keyOf(tried));
}

/** A name that somebody typed is kept by its hash alone: it may be a password in the wrong field. */
function keyOf(tried: Tried): string {
  return createHash('sha256').update(tried).digest('hex');
}

function minutesUntil(until: Date, now: Date): number {
  return Math.max(1, Math.ceil((until.getTime() - now.getTime()) / 60_000));
}
