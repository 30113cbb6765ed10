import type { Case } from '@/lib/cases/case';
import { type HookUp, type HookUpError, performCheck } from '@/lib/cases/perform-check';
import type { Catalogue } from '@/lib/catalogue';
import { type Act, instrumentsDestroyed, type ReadingAct } from '@/lib/grading/acts';
import { conditionIds } from '@/lib/rig/condition';

export type ReadingError = HookUpError | 'instrument-destroyed';

/** What hooking up and reading comes to after `acts`. */
export function decideReading(
  theCase: Case,
  catalogue: Catalogue,
  acts: readonly Act[],
  hookUp: HookUp,
): { act: ReadingAct } | { error: ReadingError } {
  if (instrumentsDestroyed(acts).has(hookUp.instrument)) return { error: 'instrument-destroyed' };
  const read = performCheck(theCase, catalogue, hookUp);
  if ('error' in read) return read;
  const condition = conditionIds.find((id) => id === hookUp.condition);
  if (!condition) return { error: 'condition-not-possible' };
  const { check, instrument } = hookUp;
  return { act: { kind: 'reading', check, condition, instrument, shown: read.shown } };
}
