import { entropy } from './belief';
import { expectedCostOf } from './repair-order';

/** Chance of each fault, sums to 1. */
type Shares = ArrayLike<number>;
/** Chance of each outcome of a look (rows) under each fault (columns). */
type Likelihoods = readonly ArrayLike<number>[];

/** Belief in each fault after an outcome with these chances, by Bayes' rule; the prior where no fault allows the outcome. */
export function posterior(prior: Shares, likelihood: ArrayLike<number>): Float64Array {
  const chance = chanceOf(prior, likelihood);
  if (chance === 0) return Float64Array.from(prior);
  return Float64Array.from(prior, (share, fault) => (share * (likelihood[fault] ?? 0)) / chance);
}

/** P(o) = Σ P(f) P(o|f). */
function chanceOf(prior: Shares, likelihood: ArrayLike<number>): number {
  let sum = 0;
  for (let fault = 0; fault < prior.length; fault++) sum += (prior[fault] ?? 0) * (likelihood[fault] ?? 0);
  return sum;
}

/** Expected value of a function of belief once the outcome is known. */
function expectedAfter(prior: Shares, likelihoods: Likelihoods, value: (belief: Float64Array) => number): number {
  return likelihoods.reduce((sum, likelihood) => {
    const chance = chanceOf(prior, likelihood);
    return chance > 0 ? sum + chance * value(posterior(prior, likelihood)) : sum;
  }, 0);
}

/** Expected drop of entropy by a look: H(P) − Σ P(o) H(P|o). In nats. */
export function informationGain(prior: Shares, likelihoods: Likelihoods): number {
  return entropy(Float64Array.from(prior)) - expectedAfter(prior, likelihoods, entropy);
}

/**
 * Minutes that a look saves before repairs are tried in their best order: ECR(P) − [C + Σ P(o) ECR(P|o)]. Not above 0 where
 * looking costs more than trying. One look ahead only.
 *
 * @param minutes  Cost of the look.
 * @param costs  Minutes of each fault's repair.
 * @source Heckerman, Breese & Rommelse, Commun. ACM 38(3) 1995 (abstract read).
 */
export function valueOfLook(prior: Shares, likelihoods: Likelihoods, minutes: number, costs: Float64Array): number {
  const cost = (belief: Float64Array) => expectedCostOf(belief, costs);
  return cost(Float64Array.from(prior)) - (minutes + expectedAfter(prior, likelihoods, cost));
}
