import type { Quantity } from '../checks/check';
import type { Measured } from '../checks/expected';
import { normalTail } from '../normal-tail';
import type { ConditionId } from '../rig/condition';
import type { Particles, Values } from './particles';

/** Weight of each particle, in their order; sums to 1. */
export type Belief = Float64Array;

/** One quantity of one hook-up, as it was read. */
export interface Reading {
  check: string;
  condition: ConditionId;
  quantity: Quantity;
  seen: Measured;
}

/** The model is right to this share of a value, over what the instrument and the severities in between leave open. Assumed. */
const MODEL_SPREAD = 0.02;
/** Share of readings that nothing anyone thought of explains. Keeps belief from ever ruling anything out. */
const UNTHOUGHT_OF = 1e-3;
/** A trace takes milliseconds a particle: those believed less than this neither gain nor lose by one. */
const NEGLIGIBLE = 2e-3;

/** Belief once the work order is read. */
export function beliefAtStart({ start }: Particles): Belief {
  return start;
}

/**
 * Belief after one reading: weights times the likelihood of what was measured (Bayes' rule).
 *
 * The likelihood is normal around each particle's computed value, with the uncertainty of the instrument, the spread of
 * the severities that the particle stands for, and that of the model. A stopped pointer counts everything beyond its stop.
 */
export function updateBelief(belief: Belief, particles: Particles, reading: Reading): Belief {
  const { check, condition, quantity } = reading;
  // Codes have been weighed with the work order; reading them again says nothing new.
  if (quantity.measures === 'codes') return belief;
  if (quantity.of.kind === 'trace') {
    const worth = (index: number) => (belief[index] as number) >= NEGLIGIBLE;
    return weighed(belief, likelihoodsOf(reading, particles.tracedValuesOf(quantity, condition, worth)));
  }
  const likelihoods = likelihoodsOf(reading, particles.valuesOf(check, quantity, condition));
  if (!surprises(belief, likelihoods, reading)) return weighed(belief, likelihoods);
  return weighed(belief, likelihoodsOf(reading, particles.valuesOf(check, quantity, condition, true)));
}

function likelihoodsOf({ quantity, seen }: Reading, { expected, spread }: Values): Float64Array {
  return expected.map((value, index) =>
    quantity.grades ? likelihoodOfGrade(seen.value, value) : likelihood(seen, value, spread[index] as number),
  );
}

/** Whether what is believed explains a reading hardly better than nothing does: then what was ruled out is asked as well. */
function surprises(belief: Belief, likelihoods: Float64Array, { quantity, seen }: Reading): boolean {
  let expected = 0;
  for (let index = 0; index < belief.length; index++) {
    const chance = likelihoods[index] as number;
    if (!Number.isNaN(chance)) expected += (belief[index] as number) * chance;
  }
  const nothing = quantity.grades ? 1 - SAME_GRADE - NEXT_GRADE : likelihood(seen, Number.POSITIVE_INFINITY);
  return expected < SURPRISING * nothing;
}

/** Times as likely as by nothing that anyone thought of. */
const SURPRISING = 3;

/** Weights times likelihoods, by Bayes' rule; where a likelihood is not known, nothing is learnt. */
export function weighed(belief: Belief, likelihoods: Float64Array): Belief {
  let [known, sum] = [0, 0];
  for (let index = 0; index < belief.length; index++) {
    const chance = likelihoods[index] as number;
    if (Number.isNaN(chance)) continue;
    known += belief[index] as number;
    sum += (belief[index] as number) * chance;
  }
  const usual = known > 0 ? sum / known : 1;
  return normalised(
    belief.map((weight, index) => {
      const chance = likelihoods[index] as number;
      return weight * (Number.isNaN(chance) ? usual : chance);
    }),
  );
}

/**
 * Likelihood of a measurement, as a density, where `expected` is the truth.
 *
 * @param spread  Standard spread of what is expected.
 */
export function likelihood({ value, uncertainty, beyond }: Measured, expected: number, spread = 0): number {
  const sigma = sigmaOf(uncertainty, expected, spread);
  const apart = (value - expected) / sigma;
  if (Number.isNaN(expected)) return Number.NaN;
  if (beyond) return UNTHOUGHT_OF + (1 - UNTHOUGHT_OF) * normalTail(beyond === 'high' ? apart : -apart);
  const anything = UNTHOUGHT_OF / (Math.abs(value) + 10 * uncertainty + TINY);
  if (!Number.isFinite(expected)) return anything;
  return anything + ((1 - UNTHOUGHT_OF) * Math.exp(-0.5 * apart * apart)) / (sigma * SQRT_TWO_PI);
}

/** Standard deviation of a reading around what a particle says. */
export function sigmaOf(uncertainty: number, expected: number, spread: number): number {
  return Math.hypot(uncertainty, spread, MODEL_SPREAD * expected) || TINY;
}

const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);
const TINY = 1e-12;

/** An eye now and then takes one grade for the next. Assumed, common practice has no figure. */
const SAME_GRADE = 0.94;
const NEXT_GRADE = 0.05;

export function likelihoodOfGrade(seen: number, expected: number): number {
  const apart = Math.abs(seen - expected);
  if (Number.isNaN(apart)) return Number.NaN;
  if (apart < 0.5) return SAME_GRADE;
  return apart < 1.5 ? NEXT_GRADE / 2 : 1 - SAME_GRADE - NEXT_GRADE;
}

function normalised(weights: Float64Array): Belief {
  let total = 0;
  for (const weight of weights) total += weight;
  return weights.map((weight) => weight / total);
}

/** In nats. */
export function entropy(shares: Iterable<number>): number {
  let sum = 0;
  for (const share of shares) if (share > 0) sum -= share * Math.log(share);
  return sum;
}
