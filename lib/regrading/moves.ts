/** What somebody's turn comes to before and after a change of marks. */
export interface Move {
  learnerId: string;
  turnId: string;
  before: number;
  after: number;
}

export interface Moves {
  /** Those whom it moves, the furthest first. */
  moved: readonly Move[];
  unmoved: number;
  /** Mean of all totals, before and after. */
  meanBefore: number;
  meanAfter: number;
}

/** Who moves and how. @throws RangeError without anybody. */
export function movesOf(all: readonly Move[]): Moves {
  if (all.length === 0) throw new RangeError('Nobody has a turn that could move');
  const by = ({ before, after }: Move) => after - before;
  const mean = (of: (move: Move) => number) => all.reduce((sum, move) => sum + of(move), 0) / all.length;
  const moved = all.filter((move) => by(move) !== 0).sort((a, b) => Math.abs(by(b)) - Math.abs(by(a)));
  return {
    moved,
    unmoved: all.length - moved.length,
    meanBefore: mean(({ before }) => before),
    meanAfter: mean(({ after }) => after),
  };
}
