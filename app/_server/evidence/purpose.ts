import type { DoneFor } from '@/db/queries/evidence-sources';
import type { EvidencePurpose } from '@/lib/competency/evidence';

/** Under which circumstances work was done. */
export function purposeOf({ assignment, intakeId }: Pick<DoneFor, 'assignment' | 'intakeId'>): EvidencePurpose {
  if (intakeId) return 'intake';
  return assignment?.rules.mode === 'assessed' ? 'assessed' : 'practice';
}
