import { listOverridesOf, type OverrideLine } from '@/db/queries/overrides';
import type { MarkWithManual } from '@/db/queries/question-marks';
import type { ReviewedRow } from '@/db/queries/review-work';
import { listChanges, listTurnTasks } from '@/db/queries/turn-work';
import type { Grade } from '@/lib/grading/grade';
import {
  type EffectiveCase,
  type EffectiveQuestion,
  effectiveCase,
  effectiveQuestion,
} from '@/lib/reviewing/effective';
import { catalogue } from '../catalogue';
import { database } from '../database';

/** What counts for an attempt, and who gave what of it. */
export async function effectiveAttempt(
  { assignment }: Pick<ReviewedRow, 'assignment'>,
  attemptId: string,
  grade: Grade,
): Promise<{ effective: EffectiveCase; given: readonly OverrideLine[] }> {
  const given = await listOverridesOf(database(), { attemptId });
  const cap = catalogue().rubrics.get(grade.rubric?.id ?? '')?.safetyCap ?? grade.total;
  return { effective: effectiveCase(grade, await changesOf(assignment), cap, given), given };
}

/** What counts for the questions of a sitting that are marked, by place, and who gave what. */
export async function effectiveSitting(
  { assignment, turn }: Pick<ReviewedRow, 'assignment' | 'turn'>,
  sittingId: string,
  marks: readonly MarkWithManual[],
): Promise<{ effective: ReadonlyMap<number, EffectiveQuestion>; given: readonly OverrideLine[] }> {
  const given = await listOverridesOf(database(), { sittingId });
  const changes = await changesOf(assignment);
  const tasks = turn ? await listTurnTasks(database(), turn.id) : [];
  const effective = marks.map(({ place, asked, answer, mark, manual }) => {
    const task = tasks.find(({ sittingPlace }) => sittingPlace === place)?.place;
    const marked = { asked, answer, credit: mark.credit, manual: manual?.score };
    const own = given.filter((one) => one.place === place);
    return [place, effectiveQuestion(marked, changes, task, own)] as const;
  });
  return { effective: new Map(effective), given };
}

async function changesOf(assignment: ReviewedRow['assignment']) {
  return assignment ? (await listChanges(database(), assignment.id)).map(({ change }) => change) : [];
}
