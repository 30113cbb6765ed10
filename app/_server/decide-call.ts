import type { Catalogue } from '@/lib/catalogue';
import type { CallAct } from '@/lib/grading/acts';
import { type ConditionId, conditionIds } from '@/lib/rig/condition';
import type { Rig } from '@/lib/rig/rig';

export type CallError = 'unknown-cause' | 'unknown-repair' | 'unknown-proof';

/** What a call comes to: every id in it has to be one of the choices that any case of the rig offers. */
export function decideCall(
  rig: Rig,
  catalogue: Catalogue,
  { cause, repair, check, condition }: { cause: string; repair: string; check: string; condition: string },
): { act: CallAct } | { error: CallError } {
  const causes = [...catalogue.causes.values()];
  if (!causes.some(({ id }) => id === cause)) return { error: 'unknown-cause' };
  if (!causes.some(({ repairs }) => repairs.some(({ id }) => id === repair))) return { error: 'unknown-repair' };
  const proof = proofOf(rig, catalogue, check, condition);
  if (!proof) return { error: 'unknown-proof' };
  return { act: { kind: 'call', cause, repair, proof } };
}

function proofOf(rig: Rig, { checks }: Catalogue, check: string, condition: string): CallAct['proof'] | undefined {
  const found = checks.get(check);
  const run: ConditionId | undefined = conditionIds.find((id) => id === condition);
  if (!found?.ports[rig.id] || !run || !found.conditions.includes(run)) return undefined;
  return { check, condition: run };
}
