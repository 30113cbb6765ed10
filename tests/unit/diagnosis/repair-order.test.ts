import fc from 'fast-check';
import { expect, test } from 'vitest';
import { expectedCost, type Repair, repairOrder } from '@/lib/diagnosis/repair-order';
import { costInOrder } from '../../support/cost-in-order';

const repair = (probability: number, cost: number): Repair => ({ probability, cost });

test('ties stay as they stand', () => {
  expect(repairOrder([repair(0.2, 20), repair(0.4, 40), repair(0.4, 10)])).toEqual([2, 0, 1]);
});

test('what costs nothing is tried first, and what cannot help last', () => {
  expect(repairOrder([repair(0, 10), repair(0.9, 10), repair(0.1, 0)])).toEqual([2, 1, 0]);
  expect(repairOrder([repair(0, 0), repair(1, 90)])).toEqual([1, 0]);
});

test('nothing to repair takes no order and no time', () => {
  expect(repairOrder([])).toEqual([]);
  expect(expectedCost(new Float64Array(0), new Float64Array(0))).toBe(0);
});

test('a repair that is certain costs its own minutes, whatever else there is', () => {
  expect(expectedCost(Float64Array.of(0, 1, 0), Float64Array.of(90, 25, 5))).toBe(25);
});

const weighed = fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 240 })), {
  minLength: 1,
  maxLength: 60,
});

test('the sum over pairs is the cost of the best order', () => {
  fc.assert(
    fc.property(weighed, (pairs) => {
      const total = pairs.reduce((sum, [weight]) => sum + weight, 0) || 1;
      const repairs = pairs.map(([weight, cost]) => repair(weight / total, cost));
      const probabilities = Float64Array.from(repairs, ({ probability }) => probability);
      const costs = Float64Array.from(repairs, ({ cost }) => cost);
      // Rounding of some thousand sums, each below 60 × 240 minutes.
      expect(Math.abs(expectedCost(probabilities, costs) - costInOrder(repairs, repairOrder(repairs)))).toBeLessThan(
        1e-7,
      );
    }),
    { endOnFailure: true },
  );
});
