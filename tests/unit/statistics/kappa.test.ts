import { expect, test } from 'vitest';
import { quadraticKappa } from '@/lib/statistics/kappa';

test('fewer than two answers say nothing', () => {
  expect(quadraticKappa([])).toEqual({ why: 'too-few', answers: 0 });
  expect(quadraticKappa([[2, 2]])).toEqual({ why: 'too-few', answers: 1 });
});

test('a marker who gave everybody the same says nothing', () => {
  expect(
    quadraticKappa([
      [0.1, 0.1],
      [0.1, 0.1],
      [0.1, 0.1],
    ]),
  ).toEqual({ why: 'no-spread', answers: 3 });
  expect(
    quadraticKappa([
      [1, 0],
      [1, 1],
      [1, 2],
    ]),
  ).toEqual({ why: 'no-spread', answers: 3 });
});

test('markers who always say the opposite agree less than chance', () => {
  // By hand: mean squared difference 1, by chance 1/2.
  expect(
    quadraticKappa([
      [0, 1],
      [1, 0],
    ]).kappa,
  ).toBe(-1);
});
