import { type Appeal, listAppealsOf } from '@/db/queries/appeals';
import { type CommentLine, listComments } from '@/db/queries/comments';
import type { OverrideLine } from '@/db/queries/overrides';
import { findReviewedAttempt, findReviewedSitting } from '@/db/queries/review-work';
import type { Grade } from '@/lib/grading/grade';
import type { EffectiveCase, EffectiveQuestion } from '@/lib/reviewing/effective';
import { database } from '../database';
import type { ReadSitting } from '../sittings/read-sitting';
import { effectiveAttempt, effectiveSitting } from './effective-work';
import { isTold } from './who';

/** What people said to a learner's work and gave for it, as that learner may see it. */
interface FromPerson {
  given: readonly OverrideLine[];
  comments: readonly CommentLine[];
  appeals: readonly Appeal[];
}

export interface CaseFromPerson extends FromPerson {
  effective: EffectiveCase;
}

export interface SittingFromPerson extends FromPerson {
  /** By place. */
  effective: ReadonlyMap<number, EffectiveQuestion>;
}

/** What people made of an attempt that is called; undefined while its learner is not told. The door has asked whose it is. */
export async function readCaseFromPerson(
  attemptId: string,
  grade: Grade,
  now: Date,
): Promise<CaseFromPerson | undefined> {
  const row = await findReviewedAttempt(database(), attemptId);
  if (!row || !(await isTold(row.assignment, now))) return undefined;
  const [counted, comments, appeals] = await Promise.all([
    effectiveAttempt(row, attemptId, grade),
    listComments(database(), { attemptId }),
    listAppealsOf(database(), { attemptId }),
  ]);
  return { ...counted, comments, appeals };
}

/** What people made of a sitting; undefined while its learner is not told, or it is open. The door has asked whose it is. */
export async function readSittingFromPerson(
  { sitting, places }: ReadSitting,
  now: Date,
): Promise<SittingFromPerson | undefined> {
  const sittingId = sitting.id;
  const row = await findReviewedSitting(database(), sittingId);
  if (!row?.finishedAt || !(await isTold(row.assignment, now))) return undefined;
  const marks = places.flatMap(({ mark }) => mark ?? []);
  const [counted, comments, appeals] = await Promise.all([
    effectiveSitting(row, sittingId, marks),
    listComments(database(), { sittingId }),
    listAppealsOf(database(), { sittingId }),
  ]);
  return { ...counted, comments, appeals };
}
