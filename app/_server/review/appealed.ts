import type { Appeal } from '@/db/queries/appeals';
import type { SignedInPermit } from '../permit';
import { type Reviewed, readReviewedAttempt, readReviewedSitting } from './reviewed';

/** The work that an appeal is about, for the holder of a permit who may review it; undefined where there is none for them. */
export async function reviewedOf(
  permit: SignedInPermit,
  { attemptId, sittingId }: Pick<Appeal, 'attemptId' | 'sittingId'>,
  now: Date,
): Promise<Reviewed | undefined> {
  if (attemptId) return readReviewedAttempt(permit, attemptId, now);
  return sittingId ? readReviewedSitting(permit, sittingId, now) : undefined;
}

/** Where the work of an appeal is reviewed. */
export function addressOfAppealed({ id, attemptId, sittingId, place }: Appeal): string {
  if (attemptId) return `/review/attempts/${attemptId}#appeal-${id}`;
  return `/review/sittings/${sittingId}${place === null ? '' : `?at=${place}`}#appeal-${id}`;
}
