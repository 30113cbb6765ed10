import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kendallDistance, orderShare } from '@/lib/questions/kendall';

/**
 * Swaps of neighbours that sorting by exchange makes: the same number by another way.
 *
 * @source D. E. Knuth, The Art of Computer Programming 3, 5.2.2: exchanges of bubble sort = inversions (from memory).
 */
function bubbleSwaps(right: readonly string[], given: readonly string[]): number {
  const places = given.map((id) => right.indexOf(id));
  let swaps = 0;
  for (let end = places.length - 1; end > 0; end--)
    for (let at = 0; at < end; at++) {
      const [left = 0, next = 0] = [places[at], places[at + 1]];
      if (left <= next) continue;
      places[at] = next;
      places[at + 1] = left;
      swaps += 1;
    }
  return swaps;
}

/** Inversions counted while merging sorted halves. */
function mergeInversions(places: readonly number[]): { sorted: number[]; count: number } {
  if (places.length < 2) return { sorted: [...places], count: 0 };
  const middle = places.length >> 1;
  const [left, right] = [mergeInversions(places.slice(0, middle)), mergeInversions(places.slice(middle))];
  const sorted: number[] = [];
  let [i, count] = [0, left.count + right.count];
  for (const value of right.sorted) {
    while (i < left.sorted.length && (left.sorted[i] ?? 0) <= value) sorted.push(left.sorted[i++] ?? 0);
    count += left.sorted.length - i;
    sorted.push(value);
  }
  return { sorted: [...sorted, ...left.sorted.slice(i)], count };
}

const orders = fc
  .uniqueArray(fc.stringMatching(/^[a-z]{1,3}$/), { minLength: 0, maxLength: 14 })
  .chain((items) => fc.tuple(fc.constant(items), fc.shuffledSubarray(items, { minLength: items.length })));

describe('Kendall distance', () => {
  it('is the number of swaps that bubble sort makes', () => {
    fc.assert(
      fc.property(orders, ([right, given]) => {
        expect(kendallDistance(right, given)).toBe(bubbleSwaps(right, given));
      }),
      { seed: 11, numRuns: 2000 },
    );
  });

  it('is the number of inversions that merge sort counts', () => {
    fc.assert(
      fc.property(orders, ([right, given]) => {
        const places = given.map((id) => right.indexOf(id));
        expect(kendallDistance(right, given)).toBe(mergeInversions(places).count);
      }),
      { seed: 12, numRuns: 2000 },
    );
  });

  it('is the same either way round, and nothing only for the same order', () => {
    fc.assert(
      fc.property(orders, ([right, given]) => {
        expect(kendallDistance(right, given)).toBe(kendallDistance(given, right));
        expect(kendallDistance(right, given) === 0).toBe(right.join() === given.join());
      }),
      { seed: 13, numRuns: 1000 },
    );
  });

  it.each([
    // Knuth, The Art of Computer Programming 3, 5.1.1: inversion table 2 3 6 4 0 2 2 1 0 of 5 9 1 8 2 6 4 7 3 (from memory).
    { given: '591826473', distance: 20 },
    // All pairs of n items reversed, n(n − 1)/2: Kendall 1938 (from memory).
    { given: '654321', distance: 15 },
    { given: '213456', distance: 1 },
    { given: '123456', distance: 0 },
  ])('of $given from its sorted order is $distance', ({ given, distance }) => {
    const right = [...given].sort();
    expect(kendallDistance(right, [...given])).toBe(distance);
  });

  it.each([
    // τ = 1 − 4 d / (n (n − 1)), so that the share of pairs in order is (1 + τ) / 2: Kendall 1938 (from memory).
    { given: '591826473', tau: 1 - (4 * 20) / (9 * 8) },
    { given: '654321', tau: -1 },
    { given: '123456', tau: 1 },
  ])('gives $given the share of Kendall’s τ', ({ given, tau }) => {
    expect(orderShare([...given].sort(), [...given])).toBeCloseTo((1 + tau) / 2, 12);
  });
});
