import { recordCall } from '@/db/queries/calls';
import type { CallAct } from '@/lib/grading/acts';
import { gradeAttempt, type KnownOfCase, standardRubric } from '@/lib/grading/grade-attempt';
import { catalogue } from './catalogue';
import { database } from './database';
import { settleSoon } from './evidence/settle';
import { caseOf, type History, readHistory } from './history';
import type { Desk } from './permit';
import { type ClosedReason, closedReason } from './take-act';
import { openAt } from './turns/turn-clock';

const TRIES = 5;

export interface CallOptions {
  /** When it is made, if not now. */
  at?: Date;
  /** Of the attempt's case, where that was worked out already. */
  known?: KnownOfCase;
}

/**
 * Grades an open attempt and closes it, once. What the learner did is read from the database; when an act comes in
 * between, it is graded again with that act.
 */
export async function makeCall(
  desk: Desk,
  attemptId: string,
  key: string,
  body: CallAct,
  options: CallOptions = {},
): Promise<{ done: true } | { error: ClosedReason }> {
  for (let tries = 0; tries < TRIES; tries++) {
    const history = await readHistory(desk, attemptId);
    if (!history) return { error: 'not-there' };
    if (history.call?.key === key) return { done: true };
    const closed = closedReason(history, options.at ?? new Date());
    if (closed) return { error: closed };
    if (await write(desk, history, { key, body, ...options })) {
      await settleSoon(database(), desk);
      return { done: true };
    }
  }
  return { error: 'attempt-busy' };
}

function write(
  { learnerId }: Desk,
  { attempt, acts, turn }: History,
  { key, body, known, at = new Date() }: { key: string; body: CallAct } & CallOptions,
) {
  const seq = (acts.at(-1)?.seq ?? 0) + 1;
  const rubric = standardRubric(catalogue(), turn?.assignment.rules.weights ?? undefined);
  const grade = gradeAttempt(caseOf(attempt), catalogue(), [...acts, { ...body, seq }], rubric, known);
  return recordCall(database(), learnerId, { attemptId: attempt.id, seq, key, body, grade, calledAt: at }, openAt(at));
}
