import { type FreeText, findLastMarker } from '@/db/queries/manual-marks';
import { findReviewedSitting } from '@/db/queries/review-work';
import { awaitsSecond } from '@/db/queries/second-marks';
import { database } from '../database';
import { isNamed } from './who';

export interface Marking {
  /** The answer is of whoever is to mark it. */
  isOwn: boolean;
  /** Whoever marks may know who answered. */
  mayName: boolean;
  /** Somebody else gave the first mark, and a second is to be given that does not know it. */
  isHidden: boolean;
}

/** What somebody who is to mark free text may see and do. */
export async function markingOf(text: FreeText, personId: string, now: Date): Promise<Marking> {
  const row = await findReviewedSitting(database(), text.sittingId);
  const last = await findLastMarker(database(), text);
  const isOthers = last !== undefined && last !== personId;
  return {
    isOwn: text.learnerId === personId,
    mayName: await isNamed(row?.assignment ?? null, now),
    isHidden: isOthers && (await awaitsSecond(database(), text)),
  };
}
