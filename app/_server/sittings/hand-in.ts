import { setImmediate } from 'node:timers/promises';
import { marking, type QuestionMark } from '@/db/queries/question-marks';
import { handingIn, listOverdue } from '@/db/queries/sittings';
import { claimThen } from '@/db/together';
import { database } from '../database';
import { settleSoon } from '../evidence/settle';
import type { Desk } from '../permit';
import { markPlace } from './mark-place';
import { GRACE, isOverdue, isPresent, type ReadSitting, readSitting } from './read-sitting';

/** More answers than this in a moment come from no hand. */
const TRIES = 5;

/**
 * Hands a sitting in and marks what is not marked yet: in a check every question, in a drill or a review none that was left
 * unanswered. One whose question content has changed since is not marked, and does not count.
 *
 * @returns false when there is no such sitting of theirs.
 */
export async function handIn(desk: Desk, sittingId: string, now: Date): Promise<boolean> {
  for (let tries = 0; tries < TRIES; tries++) {
    const read = await readSitting(desk, sittingId);
    if (!read) return false;
    if (read.sitting.handedInAt || (await handInAsRead(desk, read, now))) return true;
  }
  throw new Error(`Answers to ${sittingId} come in faster than they are marked`);
}

async function handInAsRead(desk: Desk, { sitting, places, lastSeq }: ReadSitting, now: Date): Promise<boolean> {
  const at = sitting.closesAt && isOverdue(sitting, now) ? sitting.closesAt : now;
  const due = places.filter((place) => !place.mark && isPresent(place) && (sitting.mode === 'check' || place.answer));
  const marks: QuestionMark[] = [];
  for (const place of due) {
    marks.push(await markPlace(place, place.answer, at));
    // Drawing what was not drawn yet takes long: others are let in between.
    await setImmediate();
  }
  const claim = handingIn(database(), desk.learnerId, { sittingId: sitting.id, lastSeq, at });
  const handedIn = await claimThen(
    database(),
    claim,
    marks.map((mark) => marking(database(), mark)),
  );
  if (handedIn) await settleSoon(database(), desk);
  return handedIn;
}

/** Hands in what ran out of time while nobody looked. */
export async function handInOverdue(desk: Desk, now: Date): Promise<void> {
  const overdue = await listOverdue(database(), desk, new Date(now.getTime() - GRACE));
  for (const { id } of overdue) await handIn(desk, id, now);
}
