import type { Intake } from '@/db/queries/intakes';

export const intakeStates = ['taken-back', 'link-ended', 'waiting', 'under-way', 'finished'] as const;
export type IntakeState = (typeof intakeStates)[number];

/** Where a new-hire check stands for those who gave it. */
export function stateOfIntake(
  {
    startedAt,
    finishedAt,
    tokenHash,
    linkEndsAt,
  }: Pick<Intake, 'startedAt' | 'finishedAt' | 'tokenHash' | 'linkEndsAt'>,
  now: Date,
): IntakeState {
  if (finishedAt) return 'finished';
  if (startedAt) return 'under-way';
  if (!tokenHash) return 'taken-back';
  return linkEndsAt <= now ? 'link-ended' : 'waiting';
}
