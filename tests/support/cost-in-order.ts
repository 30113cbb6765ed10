import type { Repair } from '@/lib/diagnosis/repair-order';

/**
 * Expected minutes until the right repair is made when repairs are tried in an order, by the definition.
 *
 *     ECR = Σᵢ Cᵢ (1 − Σⱼ pⱼ), j before i
 */
export function costInOrder(repairs: readonly Repair[], order: readonly number[]): number {
  let [sum, left] = [0, 1];
  for (const index of order) {
    const { probability, cost } = repairs[index] as Repair;
    sum += cost * left;
    left -= probability;
  }
  return sum;
}
