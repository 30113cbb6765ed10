/** Tries that cost nothing but the try. */
export const FREE_TRIES = 5;
const FIRST_WAIT = 30;
const LONGEST_WAIT = 15 * 60;

/**
 * Seconds to wait after so many refused tries in a row: none up to five, then half a minute, doubled each time, to a
 * quarter of an hour at most, so that nobody can shut somebody else out for long.
 */
export function waitingSeconds(refused: number): number {
  if (refused < FREE_TRIES) return 0;
  return Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** (refused - FREE_TRIES));
}
