import type { Gauge } from '../gauges/gauge';
import { standardUncertainty } from '../gauges/uncertainty';
import { normalTail } from '../normal-tail';
import { fromSi, toSi } from '../units';
import { OUTCOMES } from './active';
import { likelihoodOfGrade, sigmaOf } from './belief';
import type { Outcome } from './value-of-look';

/** Values of one quantity for the active particles, as an instrument could show them. */
export interface Foretold {
  values: Float64Array;
  /** One over the standard deviation of a reading around each. */
  perSigma: Float64Array;
  graded: boolean;
}

/** What an instrument would show under each active particle. */
export function foretell(
  gauge: Gauge,
  expected: Float64Array,
  spread: Float64Array,
  index: Int32Array,
  graded: boolean,
): Foretold {
  const [least, most] = [toSi(gauge.range.min, gauge.unit), toSi(gauge.range.max, gauge.unit)];
  const values = new Float64Array(index.length);
  const perSigma = new Float64Array(index.length);
  for (let at = 0; at < index.length; at++) {
    const value = expected[index[at] as number] as number;
    values[at] = Math.min(most, Math.max(least, value));
    const uncertainty = standardUncertainty(gauge, fromSi(values[at] as number, gauge.unit));
    perSigma[at] = 1 / sigmaOf(uncertainty, values[at] as number, spread[index[at] as number] as number);
  }
  return { values, perSigma, graded };
}

/**
 * The outcomes that stand for all that one hook-up may show: each reads every quantity under one of the truths.
 *
 * @param truths  Active particles, by outcome, all as likely.
 */
export function outcomesOf(foretold: readonly Foretold[], truths: Int32Array): Outcome[] {
  return Array.from(truths, (truth, outcome) => ({
    onceIn: truths.length,
    weigh: (weights) => {
      foretold.forEach((one, quantity) => {
        weighByOutcome(weights, one, truth, errorOf(outcome, quantity));
      });
    },
  }));
}

/** Multiplies weights by the likelihood of reading what particle `truth` says, `error` standard deviations off. */
function weighByOutcome(posterior: Float64Array, { values, perSigma, graded }: Foretold, truth: number, error: number) {
  const exact = values[truth] as number;
  const read = graded ? exact : exact + error / (perSigma[truth] as number);
  for (let at = 0; at < posterior.length; at++) {
    const value = values[at] as number;
    const scale = perSigma[at] as number;
    const apart = (read - value) * scale;
    const chance = graded ? likelihoodOfGrade(read, value) : scale * (Math.exp(-0.5 * apart * apart) + FLOOR);
    posterior[at] = (posterior[at] as number) * chance;
  }
}

/** What is left of the likelihood far from what is expected. */
const FLOOR = 1e-6;

/** Standard normal errors, spread evenly over the outcomes, in another order for each quantity. */
const ERRORS = Float64Array.from({ length: OUTCOMES }, (_, k) => normalQuantile((k + 0.5) / OUTCOMES));
/** Prime to the number of outcomes. */
const STRIDES = [5, 7, 11, 13, 17, 19] as const;

function errorOf(outcome: number, quantity: number): number {
  const stride = STRIDES[quantity % STRIDES.length] as number;
  return ERRORS[(outcome * stride + quantity) % OUTCOMES] as number;
}

/** z with P(Z ≤ z) = share, by halving. */
function normalQuantile(share: number): number {
  let [low, high] = [-6, 6];
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (1 - normalTail(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
