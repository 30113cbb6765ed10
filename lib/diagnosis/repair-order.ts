/**
 * In which order to try repairs when looking any further costs more than trying. One repair is the right one, a wrong one
 * costs its minutes and leaves the rest as they were, and a right one shows at once.
 *
 * @source Kadane & Simon 1977; Heckerman, Breese & Rommelse, Commun. ACM 38(3) 1995 (abstracts read).
 */
export interface Repair {
  probability: number;
  /** Minutes. */
  cost: number;
}

/** Indices of the repairs by probability a minute, the greatest first, ties as they stand: the order that costs least. */
export function repairOrder(repairs: readonly Repair[]): number[] {
  const rates = repairs.map(({ probability, cost }) => (cost > 0 ? probability / cost : freeRate(probability)));
  return [...repairs.keys()].sort((a, b) => {
    const [one, other] = [rates[a] as number, rates[b] as number];
    return one === other ? a - b : other - one;
  });
}

/** What costs nothing comes first, unless it cannot help. */
function freeRate(probability: number): number {
  return probability > 0 ? Number.POSITIVE_INFINITY : 0;
}

/**
 * Expected minutes until the right repair is made, in the best order. Without sorting: of any two repairs the one with more
 * probability a minute comes first and takes the greater of pᵢCⱼ and pⱼCᵢ off the sum.
 *
 *     ECR = Σᵢ Cᵢ (1 − Σⱼ pⱼ), j before i
 *         = Σᵢ Cᵢ − Σ max(pᵢ Cⱼ, pⱼ Cᵢ), over pairs i < j
 */
export function expectedCost(probabilities: Float64Array, costs: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < costs.length; i++) {
    const [p, cost] = [probabilities[i] as number, costs[i] as number];
    sum += cost;
    for (let j = 0; j < i; j++) sum -= Math.max(p * (costs[j] as number), (probabilities[j] as number) * cost);
  }
  return sum;
}
