import type { Turn } from '@/db/queries/turns';
import { GRACE } from '../sittings/read-sitting';

/** Before this, a turn has to have ended to take nothing any more: what was on its way then still counts. */
export function openAt(now: Date): Date {
  return new Date(now.getTime() - GRACE);
}

/** Whether the time of a turn is over, with what was on its way. */
export function isOverdue({ endsAt }: Pick<Turn, 'endsAt'>, now: Date): boolean {
  return endsAt <= openAt(now);
}

/** Whether a turn still takes work. */
export function goesOn(turn: Pick<Turn, 'endsAt' | 'handedInAt'>, now: Date): boolean {
  return turn.handedInAt === null && !isOverdue(turn, now);
}
