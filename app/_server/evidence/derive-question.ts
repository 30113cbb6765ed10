import type { Db } from '@/db/client';
import { questionWork } from '@/db/queries/evidence-due';
import { findAccepted, findQuestionSource } from '@/db/queries/evidence-sources';
import { awaitsSecond } from '@/db/queries/second-marks';
import { listChanges } from '@/db/queries/turn-work';
import { evidenceOfQuestion } from '@/lib/competency/evidence-of-question';
import { DESIGN_SPREAD, type Derived, type Difficulty } from '@/lib/competency/response';
import type { QuestionSpec } from '@/lib/questions/question';
import { isWithdrawn } from '@/lib/regrading/remark-case';
import { effectiveQuestion } from '@/lib/reviewing/effective';
import { purposeOf } from './purpose';

type Source = NonNullable<Awaited<ReturnType<typeof findQuestionSource>>>;

/** What a marked question tells, from the points that count now; nothing while it waits for a person, or for a second one. */
export async function deriveQuestion(db: Db, learnerId: string, sittingId: string, place: number): Promise<Derived[]> {
  const source = await findQuestionSource(db, learnerId, sittingId, place);
  if (!source || (await awaitsSecond(db, { sittingId, place }))) return [];
  const { mark, question, assignment, taskPlace, manual, given } = source;
  const { asked, answer } = mark;
  const changes = assignment ? (await listChanges(db, assignment.id)).map(({ change }) => change) : [];
  const marked = { asked, answer, credit: mark.mark.credit, manual };
  const { points } = effectiveQuestion(marked, changes, taskPlace ?? undefined, given);
  const response = {
    work: questionWork(sittingId, place),
    counts: taskPlace === null || !isWithdrawn(changes, taskPlace),
    hints: 0,
    exposure: exposureOf(source),
    purpose: purposeOf(source),
    at: mark.markedAt.getTime(),
    versions: { content: question.questionHash, generator: question.questionVersion },
  };
  const graded = { asked, answered: answer !== null, points };
  return evidenceOfQuestion(graded, await difficultyOf(db, source), response);
}

/** A generated question is met again with the same seed, a written one whatever its version and numbers. */
function exposureOf({ question: { spec, seed }, writtenId }: Source): string {
  return spec ? `question ${specKey(spec)}` : `written ${writtenId ?? seed}`;
}

function specKey({ kind, rig, topic, seed }: QuestionSpec): string {
  return [kind, rig ?? '', topic ?? '', seed].join(' ');
}

/** The last accepted before it was answered, or the design's. */
async function difficultyOf(db: Db, { mark, assignment, taskPlace }: Source): Promise<Difficulty> {
  const items = assignment && taskPlace !== null ? [`${assignment.setVersionId} ${taskPlace}`] : [];
  const accepted = await findAccepted(db, assignment?.organizationId ?? '', items, mark.markedAt);
  if (accepted) return { logits: accepted.difficulty, spread: accepted.standardError };
  return { logits: mark.asked.difficulty, spread: DESIGN_SPREAD };
}
