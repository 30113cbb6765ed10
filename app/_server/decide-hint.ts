import type { Catalogue } from '@/lib/catalogue';
import { hintFor, type ReasonedHint } from '@/lib/coaching/hint';
import { caseOf, type History } from './history';

export type HintError = 'not-there' | 'hint-stands';

/** What asking for a hint comes to. An attempt that is not coached answers as one that is not there. */
export function decideHint(
  { attempt, acts }: Pick<History, 'attempt' | 'acts'>,
  catalogue: Catalogue,
): { act: ReasonedHint } | { error: HintError } {
  if (!attempt.coached) return { error: 'not-there' };
  if (hintStands(acts)) return { error: 'hint-stands' };
  return { act: hintFor(caseOf(attempt), catalogue, acts) };
}

/** Whether nothing has been read since the last hint, so that another would say the same. */
export function hintStands(acts: History['acts']): boolean {
  const last = acts.findLast(({ kind }) => kind !== 'finding');
  return last?.kind === 'hint';
}
