/** A point of a chart, each part 0…1 from its lower left. */
export type Place = readonly [x: number, y: number];
export type Line = readonly Place[];

/** Middle of a label. */
export interface LabelPlace {
  x: number;
  y: number;
}

/** Size of a label as a share of the chart. */
const LABEL = { width: 0.42, height: 0.12 };
/** Between a label and its line. */
const GAP = 0.015;
const CANDIDATES = 24;
/** Lines closer than this cannot be told apart by what is written beside one of them. */
const APART = 0.12;

/** What makes a place a bad one, each against a line that climbs over the whole height beside the label. */
const COST = { outside: 20, covered: 20, overLabel: 10, together: 0.3, nearerToOther: 2, away: 0.1 };

/** Where to write each line's name so that it stands close to its own line, on no line and on no other name. */
export function labelPlaces(lines: readonly Line[]): LabelPlace[] {
  const placed: LabelPlace[] = [];
  for (const own of lines) {
    const others = lines.filter((line) => line !== own);
    const costs = candidates(own).map((place) => ({ place, cost: costOf(place, own, others, placed) }));
    const best = costs.reduce((least, candidate) => (candidate.cost < least.cost ? candidate : least));
    placed.push({ x: best.place.x, y: kept(best.place.y) });
  }
  return placed;
}

/** Above and below the line, all along it: close by, or a label's height off. */
interface Candidate extends LabelPlace {
  /** How many labels would fit between it and its line. */
  away: number;
}

function candidates(own: Line): Candidate[] {
  return Array.from({ length: CANDIDATES }, (_, step) => {
    const x = LABEL.width / 2 + ((1 - LABEL.width) * step) / (CANDIDATES - 1);
    const beside = within(own, x);
    return [0, 1].flatMap((away) => {
      const reach = GAP + LABEL.height * (0.5 + away);
      return [
        { x, y: Math.max(...beside) + reach, away },
        { x, y: Math.min(...beside) - reach, away },
      ];
    });
  }).flat();
}

function costOf(place: Candidate, own: Line, others: readonly Line[], placed: readonly LabelPlace[]): number {
  const beside = within(own, place.x);
  const steepness = Math.max(...beside) - Math.min(...beside);
  const confusing = others.reduce((sum, other) => sum + confusion(place, own, other), 0);
  return (
    steepness +
    confusing +
    COST.away * place.away +
    COST.outside * Math.abs(place.y - kept(place.y)) +
    COST.covered * covered(place, [own, ...others]) +
    COST.overLabel * placed.filter((taken) => overlap(place, taken)).length
  );
}

/** How easily a label is taken for another line's. */
function confusion({ x, y }: LabelPlace, own: Line, other: Line): number {
  const [mine, theirs] = [mean(within(own, x)), mean(within(other, x))];
  const together = COST.together * Math.max(0, 1 - Math.abs(mine - theirs) / APART);
  return together + (Math.abs(y - theirs) < Math.abs(y - mine) ? COST.nearerToOther : 0);
}

/** Heights of a line over the width of a label. */
function within(line: Line, x: number): number[] {
  const found = line.filter(([at]) => Math.abs(at - x) <= LABEL.width / 2).map(([, y]) => y);
  return found.length > 0 ? found : [0.5];
}

function mean(heights: readonly number[]): number {
  return heights.reduce((sum, height) => sum + height, 0) / heights.length;
}

/** Share of the points over the label's width that lie under it. */
function covered({ x, y }: LabelPlace, lines: readonly Line[]): number {
  const near = lines.flatMap((line) => within(line, x));
  return near.filter((height) => Math.abs(height - kept(y)) < LABEL.height / 2).length / near.length;
}

function overlap(one: LabelPlace, other: LabelPlace): boolean {
  return Math.abs(one.x - other.x) < LABEL.width && Math.abs(kept(one.y) - other.y) < LABEL.height;
}

function kept(y: number): number {
  return Math.min(1 - LABEL.height / 2, Math.max(LABEL.height / 2, y));
}
