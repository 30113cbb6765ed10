import type { Scheme } from './scheme';
import { DAY } from './standing';

/** An application made before, under whichever version. */
export interface Earlier {
  state: 'open' | 'granted' | 'refused' | 'withdrawn';
  /** ms. */
  appliedAt: number;
  /** ms; null while it is open. */
  decidedAt: number | null;
}

/** Whether somebody may apply, or why not and from when, ms. */
export type MayApply = { code: 'yes' } | { code: 'open' } | { code: 'wait' | 'per-year'; from: number };

const YEAR = 365 * DAY;

/**
 * Whether somebody may apply for a certificate: one application at a time, a wait after each refusal since the last grant, and
 * so many in a year. One that was withdrawn counts for neither.
 *
 * @param at  Now, ms.
 */
export function mayApply(
  { retake: { waitDays, perYear } }: Pick<Scheme, 'retake'>,
  earlier: readonly Earlier[],
  at: number,
): MayApply {
  if (earlier.some(({ state }) => state === 'open')) return { code: 'open' };
  const counted = earlier
    .filter(({ state }) => state !== 'withdrawn')
    .toSorted((one, other) => one.appliedAt - other.appliedAt);
  const granted = counted.findLastIndex(({ state }) => state === 'granted');
  const refused = counted.slice(granted + 1);
  const last = refused.at(-1);
  const wait = waitDays[Math.min(refused.length, waitDays.length) - 1] ?? 0;
  const free = last ? (last.decidedAt ?? last.appliedAt) + wait * DAY : 0;
  if (at < free) return { code: 'wait', from: free };
  const lately = counted.filter(({ appliedAt }) => at - appliedAt < YEAR);
  const oldest = lately[lately.length - perYear];
  return lately.length >= perYear && oldest ? { code: 'per-year', from: oldest.appliedAt + YEAR } : { code: 'yes' };
}
