import { entropy } from './belief';
import { expectedCost } from './repair-order';

/** What is believed, and what hangs on it. */
export interface Stakes {
  /** Of each possibility; sums to 1. */
  weight: Float64Array;
  /** The repair decision that each possibility calls for, counted from 0. */
  decision: Int32Array;
  /** Minutes, by decision. */
  costs: Float64Array;
  /** Of the decision, nats. */
  entropy: number;
  /** Expected minutes if one repaired now. */
  cost: number;
}

/** One thing that a look may show. */
export interface Outcome {
  /** Looks of which one shows it: one over its chance. */
  onceIn: number;
  /** Multiplies the weight of each possibility by the likelihood of this outcome. */
  weigh(weights: Float64Array): void;
}

export function stakesOf(weight: Float64Array, decision: Int32Array, costs: Float64Array): Stakes {
  const shares = new Float64Array(costs.length);
  for (let at = 0; at < weight.length; at++) add(shares, decision[at] as number, weight[at] as number);
  return { weight, decision, costs, entropy: entropy(shares), cost: expectedCost(shares, costs) };
}

/**
 * What a look is worth before it is made. One look ahead only.
 *
 *     gain  = H(P) − Σ P(o) H(P|o), nats
 *     saves = ECR(P) − [C + Σ P(o) ECR(P|o)], minutes
 *
 * What is saved is not above 0 where looking costs more than trying the repairs in their best order.
 *
 * @param minutes  Cost of the look.
 * @source Heckerman, Breese & Rommelse, Commun. ACM 38(3) 1995 (abstract read).
 */
export function valueOfLook(stakes: Stakes, outcomes: Iterable<Outcome>, minutes: number) {
  const { weight, decision, costs } = stakes;
  const shares = new Float64Array(costs.length);
  const posterior = new Float64Array(weight.length);
  let [left, cost] = [0, 0];
  for (const { onceIn, weigh } of outcomes) {
    posterior.set(weight);
    weigh(posterior);
    sharesOf(posterior, decision, shares);
    left += entropy(shares) / onceIn;
    cost += expectedCost(shares, costs) / onceIn;
  }
  return { gain: stakes.entropy - left, saves: stakes.cost - (minutes + cost) };
}

/** Belief in each decision, written into the lent shares. */
function sharesOf(posterior: Float64Array, decision: Int32Array, shares: Float64Array): void {
  shares.fill(0);
  let all = 0;
  for (let at = 0; at < posterior.length; at++) {
    add(shares, decision[at] as number, posterior[at] as number);
    all += posterior[at] as number;
  }
  for (let at = 0; at < shares.length; at++) shares[at] = (shares[at] as number) / all;
}

function add(sums: Float64Array, at: number, amount: number): void {
  sums[at] = (sums[at] as number) + amount;
}
