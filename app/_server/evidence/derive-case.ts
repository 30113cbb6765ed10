import type { Db } from '@/db/client';
import { findAccepted, findCaseSource } from '@/db/queries/evidence-sources';
import { listChanges } from '@/db/queries/turn-work';
import { evidenceOfCase } from '@/lib/competency/evidence-of-case';
import { DESIGN_SPREAD, type Derived, type Difficulty } from '@/lib/competency/response';
import { isWithdrawn } from '@/lib/regrading/remark-case';
import { effectiveCase } from '@/lib/reviewing/effective';
import { catalogue } from '../catalogue';
import { purposeOf } from './purpose';

type Source = NonNullable<Awaited<ReturnType<typeof findCaseSource>>>;

/** What a called case tells, from the points that count now; nothing where there is no such case. */
export async function deriveCase(db: Db, learnerId: string, attemptId: string): Promise<Derived[]> {
  const source = await findCaseSource(db, learnerId, attemptId);
  if (!source) return [];
  const { attempt, call, assignment, taskPlace, acts, given } = source;
  const { grade } = call;
  const changes = assignment ? (await listChanges(db, assignment.id)).map(({ change }) => change) : [];
  const rubric = catalogue().rubrics.get(grade.rubric?.id ?? '') ?? catalogue().rubrics.get('standard');
  if (!rubric) return [];
  const effective = effectiveCase(grade, changes, rubric.safetyCap, given);
  const readings = acts.flatMap(({ seq, body }) => (body.kind === 'reading' ? [{ seq, check: body.check }] : []));
  const response = {
    work: `attempt ${attemptId}`,
    counts: taskPlace === null || !isWithdrawn(changes, taskPlace),
    hints: grade.hints ?? 0,
    exposure: `case ${attempt.caseCode}`,
    purpose: purposeOf(source),
    at: call.calledAt.getTime(),
    versions: {
      content: attempt.contentHash,
      generator: attempt.generatorVersion,
      ...(grade.rubric && { rubric: `${grade.rubric.id} ${grade.rubric.version}` }),
    },
  };
  const difficulty = await difficultyOf(db, source);
  const graded = { grade, effective, readings, call: call.body };
  return evidenceOfCase(graded, { difficulty, bands: rubric.bands }, response, catalogue());
}

/** The last accepted before the call, or the design's. */
async function difficultyOf(db: Db, { attempt, call, assignment, taskPlace }: Source): Promise<Difficulty> {
  const item = assignment && taskPlace !== null ? [`${assignment.setVersionId} ${taskPlace}`] : [];
  const accepted = await findAccepted(db, attempt.organizationId ?? '', item, call.calledAt);
  if (accepted) return { logits: accepted.difficulty, spread: accepted.standardError };
  return { logits: call.grade.difficulty ?? attempt.difficulty ?? 0, spread: DESIGN_SPREAD };
}
