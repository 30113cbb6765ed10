import type { Catalogue } from '@/lib/catalogue';
import type { Answer, CallAct } from '@/lib/grading/acts';
import { type ConditionId, conditionIds } from '@/lib/rig/condition';
import type { Rig } from '@/lib/rig/rig';

export type CallError = 'unknown-cause' | 'unknown-repair' | 'unknown-proof' | 'same-cause-twice' | 'unknown-step';

/** One cause with its repair and proof: ids as they came in, not yet trusted. */
export interface AnswerChoice {
  cause: string;
  repair: string;
  check: string;
  condition: string;
}

/** A call with the second cause that the learner thinks there is. */
export interface CallChoice extends AnswerChoice {
  also?: AnswerChoice;
  /** Steps that the learner puts right before the vehicle is handed back. */
  restored: readonly string[];
}

/** What a call comes to: every id in it has to be one of the choices that any case of the rig offers. */
export function decideCall(
  rig: Rig,
  catalogue: Catalogue,
  { also, restored, ...choice }: CallChoice,
): { act: CallAct } | { error: CallError } {
  const first = answerOf(rig, catalogue, choice);
  if ('error' in first) return first;
  if (restored.some((step) => !catalogue.restoring.has(step))) return { error: 'unknown-step' };
  const call: CallAct = { kind: 'call', ...first.answer, restored: [...new Set(restored)] };
  if (!also) return { act: call };
  const second = answerOf(rig, catalogue, also);
  if ('error' in second) return second;
  if (second.answer.cause === first.answer.cause) return { error: 'same-cause-twice' };
  return { act: { ...call, also: second.answer } };
}

function answerOf(
  rig: Rig,
  catalogue: Catalogue,
  { cause, repair, check, condition }: AnswerChoice,
): { answer: Answer } | { error: CallError } {
  const causes = [...catalogue.causes.values()];
  if (!causes.some(({ id }) => id === cause)) return { error: 'unknown-cause' };
  if (!causes.some(({ repairs }) => repairs.some(({ id }) => id === repair))) return { error: 'unknown-repair' };
  const proof = proofOf(rig, catalogue, check, condition);
  return proof ? { answer: { cause, repair, proof } } : { error: 'unknown-proof' };
}

function proofOf(rig: Rig, { checks }: Catalogue, check: string, condition: string): Answer['proof'] | undefined {
  const found = checks.get(check);
  const run: ConditionId | undefined = conditionIds.find((id) => id === condition);
  if (!found?.ports[rig.id] || !run || !found.conditions.includes(run)) return undefined;
  return { check, condition: run };
}
