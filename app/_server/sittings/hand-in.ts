import { handingIn, listOverdue } from '@/db/queries/sittings';
import { claimThen } from '@/db/together';
import { database } from '../database';
import type { Desk } from '../permit';
import { markingPlace } from './mark-place';
import { GRACE, type ReadSitting, readSitting } from './read-sitting';

/** Hands a sitting in and marks what is not marked yet; false where that has been done. */
export async function handIn(desk: Desk, { sitting, places }: ReadSitting, at: Date): Promise<boolean> {
  // Nobody is marked down for the question at which they left a drill.
  const due = places.filter(({ mark, answer }) => !mark && (sitting.mode === 'check' || answer !== undefined));
  const marks = await Promise.all(due.map((place) => markingPlace(place, place.answer, at)));
  return claimThen(database(), handingIn(database(), desk.learnerId, sitting.id, at), marks);
}

/** Hands in what ran out of time while nobody looked, as of when it closed. */
export async function handInOverdue(desk: Desk, now: Date): Promise<void> {
  const overdue = await listOverdue(database(), desk, new Date(now.getTime() - GRACE));
  for (const { id, closesAt } of overdue) {
    const read = await readSitting(desk, id);
    if (read) await handIn(desk, read, closesAt ?? now);
  }
}
