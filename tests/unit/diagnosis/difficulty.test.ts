import { expect, test } from 'vitest';
import { difficultyOf, type Features } from '@/lib/diagnosis/difficulty';

const usual: Features = { checks: 3, conditions: 2, closeness: 10, lookAlikes: 2, masked: false };

test.each([
  ['more checks', { checks: 5 }],
  ['more conditions', { conditions: 4 }],
  ['readings closer to their limits', { closeness: 1 }],
  ['more causes that look alike', { lookAlikes: 4 }],
  ['a second cause', { masked: true }],
])('%s make a case harder', (_, change) => {
  expect(difficultyOf({ ...usual, ...change })).toBeGreaterThan(difficultyOf(usual));
});

test('far from its limit, a reading’s distance no longer counts', () => {
  expect(difficultyOf({ ...usual, closeness: 50 })).toBeCloseTo(difficultyOf({ ...usual, closeness: 40 }), 2);
});
