/** A turn of somebody's at an assignment, as the gradebook needs it. */
export interface TurnLine {
  id: string;
  number: number;
  /** No longer open. */
  handedIn: boolean;
  /** 0…100; null while it is open or not settled. */
  total: number | null;
  /** Tasks that wait for a person. */
  waiting: number;
}

/** The turn that counts: the best of those handed in, of equals the first; while none is, the last that was begun. */
export function countingTurn<T extends TurnLine>(turns: readonly T[]): T | undefined {
  const settled = turns.filter(({ handedIn, total }) => handedIn && total !== null);
  const [first, ...others] = settled.length > 0 ? settled : turns;
  if (settled.length === 0)
    return others.reduce((last, turn) => (turn.number > (last?.number ?? 0) ? turn : last), first);
  return others.reduce((best, turn) => (isBetter(turn, best) ? turn : best), first);
}

function isBetter(one: TurnLine, other: TurnLine | undefined): boolean {
  if (!other) return true;
  const more = (one.total ?? 0) - (other.total ?? 0);
  return more > 0 || (more === 0 && one.number < other.number);
}
