import type { Decision } from '../competency/decision';

/** What somebody had to do with a candidate. */
export const conflicts = ['own', 'taught', 'marked', 'observed'] as const;
export type Conflict = (typeof conflicts)[number];

/** What keeps somebody from deciding about a candidate: themselves, or a part in the training or the examination. */
export function conflictsOf(
  { personId, candidateId }: { personId: string; candidateId: string },
  parts: readonly Exclude<Conflict, 'own'>[],
): Conflict[] {
  return [...(personId === candidateId ? (['own'] as const) : []), ...parts];
}

/** What may be decided on what the evidence says. Where it says too little nothing is: the application stays open. */
export function possibleVerdict(decision: Decision): 'granted' | 'refused' | undefined {
  if (decision === 'ready') return 'granted';
  return decision === 'not-yet' ? 'refused' : undefined;
}
