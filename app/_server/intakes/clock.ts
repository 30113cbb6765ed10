import type { Intake } from '@/db/queries/intakes';
import { openAt } from '../turns/turn-clock';

/** Whether its time is over, with what was on its way. */
export function isIntakeOverdue({ endsAt }: Pick<Intake, 'endsAt'>, now: Date): boolean {
  return endsAt !== null && endsAt <= openAt(now);
}

/** Whether it still takes work. */
export function intakeGoesOn(intake: Pick<Intake, 'startedAt' | 'endsAt' | 'finishedAt'>, now: Date): boolean {
  return intake.startedAt !== null && intake.finishedAt === null && !isIntakeOverdue(intake, now);
}

/** How long it lasts, extra time included. */
export function secondsOf({ profile, extraTime }: Pick<Intake, 'profile' | 'extraTime'>): number {
  return Math.round(profile.minutes * 60 * (1 + extraTime));
}
