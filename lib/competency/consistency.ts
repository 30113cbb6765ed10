import { normalTail } from '../normal-tail';

/** How often a decision by a sum of points would be the same again. */
export interface Consistency {
  /** Share of people who would be decided on alike by two parallel forms. */
  agreement: number;
  /** Share who would be by chance alone. */
  chance: number;
  /** What is above chance, as a share of what could be (Cohen's kappa). */
  kappa: number;
}

/**
 * Consistency from one form alone: sums of points taken for normal, those of two parallel forms correlated as much as one is
 * reliable.
 *
 * @param z  The cut in standard deviations above the mean.
 * @param reliability  0…1.
 * @source Peng & Subkoviak 1980, Journal of Educational Measurement 17 (from memory).
 */
export function normalConsistency(z: number, reliability: number): Consistency {
  const above = normalTail(z);
  return consistencyOf(bothAbove(z, reliability), above);
}

/** @param both  Share above the cut on both forms. @param above  Share above it on one. */
export function consistencyOf(both: number, above: number): Consistency {
  const agreement = 1 - 2 * above + 2 * both;
  const chance = above ** 2 + (1 - above) ** 2;
  return { agreement, chance, kappa: (agreement - chance) / (1 - chance) };
}

/** Parts for Simpson's rule, which then errs by less than 1e-9. */
const PARTS = 64;

/**
 * P(X > z and Y > z) of standard normals with correlation r, 0…1:
 *
 *     P(X > z)² + 1/2π ∫ exp(−z² / (1 + sin t)) dt,  t from 0 to asin r
 *
 * @source Plackett 1954, Biometrika 41, for equal limits (derived).
 */
function bothAbove(z: number, r: number): number {
  const end = Math.asin(r);
  const curve = (part: number) => Math.exp(-(z ** 2) / (1 + Math.sin((end * part) / PARTS)));
  let sum = curve(0) + curve(PARTS);
  for (let part = 1; part < PARTS; part++) sum += (part % 2 === 1 ? 4 : 2) * curve(part);
  return normalTail(z) ** 2 + (sum * end) / PARTS / 3 / (2 * Math.PI);
}
