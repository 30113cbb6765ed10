import { normalTail } from '../normal-tail';
import type { Bounds } from './limit';

export const verdicts = ['pass', 'fail', 'cannot-tell'] as const;
export type Verdict = (typeof verdicts)[number];

export const comparisons = ['below', 'within', 'above', 'too-close'] as const;
/** How a reading stands to a limit: beyond it on one side, inside it, or too close for the instrument. */
export type Comparison = (typeof comparisons)[number];

/** Guard band in standard uncertainties for 95 % one-sided. @source ISO 14253-1:2017 (from memory); Φ(1.645) = 0.95. */
export const GUARD = 1.645;

/**
 * How a reading stands to its limit once the instrument's uncertainty is allowed for.
 *
 * @source Guarded acceptance and rejection, JCGM 106:2012 clause 8.3; guard band w = 1.645 u.
 */
export function compare(reading: number, { min, max }: Bounds, uncertainty: number): Comparison {
  const guard = GUARD * uncertainty;
  if (min !== undefined && reading < min - guard) return 'below';
  if (max !== undefined && reading > max + guard) return 'above';
  if (min !== undefined && reading < min + guard) return 'too-close';
  if (max !== undefined && reading > max - guard) return 'too-close';
  return 'within';
}

export function verdictOf(comparison: Comparison): Verdict {
  if (comparison === 'within') return 'pass';
  return comparison === 'too-close' ? 'cannot-tell' : 'fail';
}

/**
 * Probability that the truth lies within its limits, by what one instrument showed: Φ((T_U − y)/u) − Φ((T_L − y)/u).
 *
 * @source JCGM 106:2012 clause 7.4; normal distribution, nothing known beforehand.
 */
export function conformanceProbability(
  { value, uncertainty }: { value: number; uncertainty: number },
  { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }: Bounds,
): number {
  if (uncertainty === 0) return value >= min && value <= max ? 1 : 0;
  return normalTail((min - value) / uncertainty) - normalTail((max - value) / uncertainty);
}
