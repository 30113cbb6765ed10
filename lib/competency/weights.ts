/*
 * How much a response counts. Written rules, so that they can be shown to whoever is measured.
 */

/** What went before a response. */
export interface Circumstances {
  /** Hints that were taken. */
  hints: number;
  /** How often the person has already answered the same task: same kind or case, same seed. */
  earlier: number;
}

/** By hints taken: none, one, two or more. Assumed: a hint gives away part of what the task asks. */
const HINT_WEIGHTS = [1, 1 / 2, 1 / 4] as const;

/** How much a response counts, 0…1: the first to a task alone, and less with each hint. */
export function weightOf({ hints, earlier }: Circumstances): number {
  if (earlier > 0) return 0;
  return HINT_WEIGHTS[Math.min(hints, HINT_WEIGHTS.length - 1)] as number;
}
