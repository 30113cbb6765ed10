import { GRID, GRID_LOWEST, GRID_STEP, type OnGrid } from './grid';

/*
 * The law that both kinds of task follow. With u = exp(rate · ability), the chance of score k is weights[k] · u^k over the
 * sum of all of these; where difficulty is not known for certain, that averaged over a few parts; and above the floor where
 * there is one. Along the grid u grows by the same factor each time, so that no power is worked out again.
 */

export interface Law {
  rate: number;
  floor: number;
  /** Their shares sum to 1. */
  parts: readonly Part[];
}

export interface Part {
  share: number;
  /** By score; the first is 1. */
  weights: readonly number[];
}

/**
 * Right or wrong. A difficulty that is not known for certain flattens the curve: a logistic curve averaged over a normal
 * difficulty is nearly a logistic curve again, its slope times 1 / √(1 + π slope² spread² / 8); off by no more than 0.002 for
 * a spread of 0.5.
 */
export function choiceLaw(task: {
  difficulty: number;
  slope?: number | undefined;
  spread: number;
  floor: number;
}): Law {
  const { difficulty, slope = 1, spread, floor } = task;
  const rate = slope / Math.sqrt(1 + (Math.PI * slope ** 2 * spread ** 2) / 8);
  return { rate, floor, parts: [{ share: 1, weights: weightsOf([difficulty], rate, 0) }] };
}

/**
 * Several points. All steps together are easier or harder than designed, which a flatter curve would not show: it is averaged
 * over three difficulties that stand for a normal one, off by no more than 0.001 for steps a logit apart and a spread of 0.5.
 */
export function stepsLaw(steps: readonly number[], spread: number): Law {
  const apart = spread === 0 ? [{ share: 1, z: 0 }] : NORMAL;
  return {
    rate: 1,
    floor: 0,
    parts: apart.map(({ share, z }) => ({ share, weights: weightsOf(steps, 1, z * spread) })),
  };
}

/** Gauss–Hermite's three, exact up to the fifth power. */
const NORMAL = [
  { share: 1 / 6, z: -Math.sqrt(3) },
  { share: 2 / 3, z: 0 },
  { share: 1 / 6, z: Math.sqrt(3) },
];

function weightsOf(steps: readonly number[], rate: number, harder: number): number[] {
  const weights = [1];
  let log = 0;
  for (const step of steps) {
    log -= rate * (step + harder);
    weights.push(Math.exp(log));
  }
  return weights;
}

/** @throws RangeError where the task has no such score. */
export function weightOfScore(weights: readonly number[], score: number): number {
  const weight = weights[score];
  if (weight === undefined) throw new RangeError(`No score ${score} on a task of 0 to ${weights.length - 1} points`);
  return weight;
}

/** How a score of one part is spread at a place. */
export function momentsAt(weights: readonly number[], u: number): { total: number; mean: number; variance: number } {
  let [total, first, second] = [0, 0, 0];
  for (let k = 0, power = 1; k < weights.length; k++, power *= u) {
    const share = (weights[k] as number) * power;
    total += share;
    first += k * share;
    second += k * k * share;
  }
  const mean = first / total;
  return { total, mean, variance: Math.max(0, second / total - mean ** 2) };
}

/** Chance of a score over u^score, at each ability of the grid. */
export function sharesOnGrid({ rate, parts }: Law, score: number): OnGrid {
  const shares = new Float64Array(GRID.length);
  for (const { share, weights } of parts) addPart(shares, weights, share * weightOfScore(weights, score), rate);
  return shares;
}

function addPart(shares: OnGrid, weights: readonly number[], factor: number, rate: number): void {
  const growth = Math.exp(rate * GRID_STEP);
  const highest = weights.length - 1;
  let u = Math.exp(rate * GRID_LOWEST);
  for (let at = 0; at < shares.length; at++, u *= growth) {
    let total = weights[highest] as number;
    for (let k = highest - 1; k >= 0; k--) total = total * u + (weights[k] as number);
    shares[at] = (shares[at] as number) + factor / total;
  }
}
