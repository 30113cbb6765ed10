/** A point of a chart, each part 0…1 from its lower left. */
export type Place = readonly [x: number, y: number];

/** Size of a label as a share of the chart. */
const LABEL = { width: 0.34, height: 0.1 };
/** Between a label and its line. */
const GAP = 0.015;
const CANDIDATES = 24;

export interface LabelPlace {
  /** Middle of the label. */
  x: number;
  y: number;
}

/**
 * Where to write a line's name so that it stands close to its own line and on none.
 *
 * @param own, others  Points of the lines in order of x.
 */
export function labelPlace(
  own: readonly Place[],
  others: readonly (readonly Place[])[],
  side: 'above' | 'below',
): LabelPlace {
  let best: { place: LabelPlace; cost: number } | undefined;
  for (let step = 0; step < CANDIDATES; step++) {
    const x = LABEL.width / 2 + ((1 - LABEL.width) * step) / (CANDIDATES - 1);
    const beside = within(own, x);
    const edge = side === 'above' ? Math.max(...beside) + GAP : Math.min(...beside) - GAP;
    const y = edge + (side === 'above' ? 1 : -1) * (LABEL.height / 2);
    const cost = outside(y) * 20 + steepness(beside) + 4 * covered({ x, y }, [own, ...others]);
    if (!best || cost < best.cost) best = { place: { x, y: kept(y) }, cost };
  }
  return best?.place ?? { x: 0.5, y: 0.5 };
}

/** Heights of a line over the width of a label. */
function within(line: readonly Place[], x: number): number[] {
  const found = line.filter(([at]) => Math.abs(at - x) <= LABEL.width / 2).map(([, y]) => y);
  return found.length > 0 ? found : [0.5];
}

function steepness(heights: readonly number[]): number {
  return Math.max(...heights) - Math.min(...heights);
}

/** How far a label would stick out of the chart. */
function outside(y: number): number {
  return Math.abs(y - kept(y));
}

function kept(y: number): number {
  return Math.min(1 - LABEL.height / 2, Math.max(LABEL.height / 2, y));
}

/** Share of the points over the label's width that lie under it. */
function covered({ x, y }: LabelPlace, lines: readonly (readonly Place[])[]): number {
  const near = lines.flat().filter(([at]) => Math.abs(at - x) <= LABEL.width / 2);
  const under = near.filter(([, height]) => Math.abs(height - kept(y)) < LABEL.height / 2);
  return near.length > 0 ? under.length / near.length : 0;
}
