import { countingTurn, type TurnLine } from './best-turn';
import type { Cell } from './book';

/** What a cell is made of. Times in milliseconds since 1970. */
export interface Standing {
  given: boolean;
  /** Every go of theirs at it. */
  turns: readonly (TurnLine & { handedInAt: number | null })[];
  closesAt: number;
  /** When nothing more is taken, late or not. */
  endsAt: number;
  /** Marked without names, and not all of it is marked. */
  unseen: boolean;
}

/** Where somebody stands with an assignment at a moment. */
export function cellOf({ given, turns, closesAt, endsAt, unseen }: Standing, now: number): Cell {
  const turn = countingTurn(turns);
  if (!turn) return { state: given ? (now < endsAt ? 'not-begun' : 'missed') : 'not-given', total: null, late: false };
  const late = turn.handedInAt !== null && turn.handedInAt > closesAt;
  if (!turn.handedIn) return { state: 'open', total: null, late: false };
  if (unseen) return { state: 'unseen', total: null, late };
  if (turn.total === null || turn.waiting > 0) return { state: 'waiting', total: turn.total, late };
  return { state: 'done', total: turn.total, late };
}
