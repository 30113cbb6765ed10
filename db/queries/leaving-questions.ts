import { type AnyColumn, and, eq, inArray, or, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import {
  manualMarks,
  pictures,
  questionMarks,
  sittingAnswers,
  sittingQuestions,
  sittings,
  writtenQuestions,
  writtenVersions,
} from '../schema';
import type { Statement } from '../together';
import type { MemberKey } from './people';

/** Stands for somebody who is gone in what stays without them. */
export const NOBODY = '';

/** Removes a member's sittings at questions with all that was asked, answered and marked in them. */
export function removingSittings(db: Db, member: MemberKey): Statement[] {
  const ids = db.select({ id: sittings.id }).from(sittings).where(isOf(member));
  return [
    db.delete(manualMarks).where(inArray(manualMarks.sittingId, ids)),
    db.delete(questionMarks).where(inArray(questionMarks.sittingId, ids)),
    db.delete(sittingAnswers).where(inArray(sittingAnswers.sittingId, ids)),
    db.delete(sittingQuestions).where(inArray(sittingQuestions.sittingId, ids)),
    db.delete(sittings).where(isOf(member)),
  ];
}

/** Makes a member's sittings somebody else's. */
export function movingSittings(db: Db, from: MemberKey, to: string): Statement {
  return (
    db
      .update(sittings)
      // The keys that started them may meet those of the other person.
      .set({ learnerId: to, key: sql`${sittings.key} || ${`:${from.userId}`}` })
      .where(isOf(from))
  );
}

/**
 * Leaves an organisation's questions without the member who wrote, drew, reviewed or marked them. What is not live yet goes on
 * under the heir's name.
 */
export function partingFromQuestions(db: Db, member: MemberKey, heirId: string): Statement[] {
  const unfinished = or(eq(writtenVersions.state, 'draft'), eq(writtenVersions.state, 'in-review'));
  return [
    db
      .update(writtenVersions)
      .set({ writtenBy: heirId })
      .where(and(isVersionBy(db, writtenVersions.writtenBy, member), unfinished)),
    ...renaming(db, member, NOBODY),
  ];
}

/** Puts the kept one's name to what a double wrote, drew, reviewed or marked. */
export function movingQuestions(db: Db, from: MemberKey, to: string): Statement[] {
  return renaming(db, from, to);
}

function renaming(db: Db, from: MemberKey, to: string): Statement[] {
  const { organizationId, userId } = from;
  const here = db.select({ id: sittings.id }).from(sittings).where(eq(sittings.organizationId, organizationId));
  return [
    db
      .update(writtenQuestions)
      .set({ createdBy: to })
      .where(and(eq(writtenQuestions.organizationId, organizationId), eq(writtenQuestions.createdBy, userId))),
    db
      .update(writtenVersions)
      .set({ writtenBy: to })
      .where(isVersionBy(db, writtenVersions.writtenBy, from)),
    db
      .update(writtenVersions)
      .set({ reviewedBy: to })
      .where(isVersionBy(db, writtenVersions.reviewedBy, from)),
    db
      .update(pictures)
      .set({ uploadedBy: to })
      .where(and(eq(pictures.organizationId, organizationId), eq(pictures.uploadedBy, userId))),
    db
      .update(manualMarks)
      .set({ markedBy: to })
      .where(and(inArray(manualMarks.sittingId, here), eq(manualMarks.markedBy, userId))),
  ];
}

function isVersionBy(db: Db, column: AnyColumn, { organizationId, userId }: MemberKey): SQL | undefined {
  const own = db
    .select({ id: writtenQuestions.id })
    .from(writtenQuestions)
    .where(eq(writtenQuestions.organizationId, organizationId));
  return and(eq(column, userId), inArray(writtenVersions.questionId, own));
}

function isOf({ organizationId, userId }: MemberKey): SQL | undefined {
  return and(eq(sittings.learnerId, userId), eq(sittings.organizationId, organizationId));
}
