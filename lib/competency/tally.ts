import { GRID, type OnGrid } from './grid';
import { neutralPrior, type Posterior, type Prior, posteriorFrom } from './posterior';
import { addLogChances, type TaskModel } from './task-model';

/** One graded answer, as far as it tells something of an ability. */
export interface Response {
  /** When it was given, milliseconds. */
  at: number;
  model: TaskModel;
  score: number;
  /** How much it counts, 0…1 (`weights.ts`); 0 as if it had not been given. */
  weight: number;
}

/**
 * All that the responses of one person on one topic come to. Each counts by weight · 2^(−age / half-life), so that their sum
 * at a later time is this sum times one factor: nothing needs to be read again to go on, or to see how it fades.
 */
export interface Tally {
  /** When the newest response was given, milliseconds; −∞ without any. */
  readonly at: number;
  /** Σ of aged weight · log chance, as of `at`. */
  readonly sum: OnGrid;
  /** Responses that count. */
  readonly count: number;
  /** Σ of aged weights, as of `at`. */
  readonly weight: number;
}

/** Days until a response counts half; null or ∞ where it never fades. */
export type HalfLife = number | null;

export const emptyTally: Tally = {
  at: Number.NEGATIVE_INFINITY,
  sum: new Float64Array(GRID.length),
  count: 0,
  weight: 0,
};

/** The tally with one response more, whenever it was given. */
export function withResponse(tally: Tally, response: Response, halfLifeDays: HalfLife): Tally {
  if (!counts(response)) return tally;
  const at = Math.max(tally.at, response.at);
  const kept = fading(tally.at, at, halfLifeDays);
  const added = response.weight * fading(response.at, at, halfLifeDays);
  const sum = scaled(tally.sum, kept);
  addLogChances(sum, response, added);
  return { at, sum, count: tally.count + 1, weight: kept * tally.weight + added };
}

/** The tally of responses in any order. */
export function tallyOf(responses: readonly Response[], halfLifeDays: HalfLife): Tally {
  const counted = responses.filter(counts);
  const at = counted.reduce((newest, response) => Math.max(newest, response.at), emptyTally.at);
  const sum = new Float64Array(GRID.length);
  let weight = 0;
  for (const response of counted) {
    const aged = response.weight * fading(response.at, at, halfLifeDays);
    addLogChances(sum, response, aged);
    weight += aged;
  }
  return { at, sum, count: counted.length, weight };
}

/** The sum of log chances as it counts at a time. A time before the newest response is taken for that of the response. */
export function agedTo(tally: Tally, atMs: number, halfLifeDays: HalfLife): OnGrid {
  const kept = fading(tally.at, atMs, halfLifeDays);
  return scaled(tally.sum, kept);
}

export function posteriorAt(
  tally: Tally,
  atMs: number,
  halfLifeDays: HalfLife,
  prior: Prior = neutralPrior,
): Posterior {
  return posteriorFrom(prior, agedTo(tally, atMs, halfLifeDays));
}

/** Milliseconds. */
export const DAY = 86_400_000;

/** What is left of a response's weight: 2^(−age / half-life). */
export function fading(given: number, now: number, halfLifeDays: HalfLife): number {
  if (halfLifeDays === null || halfLifeDays === Number.POSITIVE_INFINITY || given >= now) return 1;
  return 2 ** (-(now - given) / (halfLifeDays * DAY));
}

function scaled(sum: OnGrid, factor: number): OnGrid {
  const result = new Float64Array(sum.length);
  for (let at = 0; at < sum.length; at++) result[at] = factor * (sum[at] as number);
  return result;
}

function counts({ at, weight }: Response): boolean {
  if (!(weight >= 0 && weight <= 1) || !Number.isFinite(at))
    throw new RangeError(`A response of weight ${weight} at ${at}`);
  return weight > 0;
}
