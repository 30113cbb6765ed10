import { isGivenTo } from '@/db/queries/assignments';
import { findReviewedAttempt, findReviewedSitting, isAtCase, type ReviewedRow } from '@/db/queries/review-work';
import { database } from '../database';
import { organizationOf, type SignedInPermit } from '../permit';
import { isTold, type Who, whoIs } from './who';

/** A piece of work that somebody may review. */
export interface Reviewed extends ReviewedRow {
  who: Who;
  /** Its learner hears of comments and points at once. */
  told: boolean;
}

/** An attempt that the holder of a permit may review; undefined where there is none for them. */
export async function readReviewedAttempt(
  permit: SignedInPermit,
  attemptId: string,
  now: Date,
): Promise<Reviewed | undefined> {
  return reviewed(permit, await findReviewedAttempt(database(), attemptId), now);
}

/** A sitting that the holder of a permit may review; undefined where there is none for them. */
export async function readReviewedSitting(
  permit: SignedInPermit,
  sittingId: string,
  now: Date,
): Promise<Reviewed | undefined> {
  return reviewed(permit, await findReviewedSitting(database(), sittingId), now);
}

async function reviewed(
  permit: SignedInPermit,
  row: ReviewedRow | undefined,
  now: Date,
): Promise<Reviewed | undefined> {
  if (!row || row.organizationId !== organizationOf(permit)) return undefined;
  const told = await isTold(row.assignment, now);
  if (await wouldTell(permit.session.actor.personId, row, told)) return undefined;
  return { ...row, told, who: await whoIs(row, now) };
}

/** Nobody reviews what they did themselves, nor learns from another's work what their own has still to find. */
async function wouldTell(personId: string, row: ReviewedRow, told: boolean): Promise<boolean> {
  const { learnerId, organizationId, assignment, caseCode } = row;
  if (learnerId === personId) return true;
  if (caseCode && (await isAtCase(database(), personId, caseCode))) return true;
  if (!assignment || told) return false;
  return isGivenTo(database(), { assignmentId: assignment.id, organizationId, userId: personId });
}
