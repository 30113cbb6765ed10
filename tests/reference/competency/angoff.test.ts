import { describe, expect, test } from 'vitest';
import { cutOnScale, rawCut } from '@/lib/competency/angoff';
import { choice, steps } from '../../support/task-models';

describe('four judges and five tasks', () => {
  // Reference page, section 2.5: own example, arithmetic only; the ability through the Rasch curve (run).
  const cut = rawCut([
    [0.7, 0.6, 0.8, 0.55, 0.9],
    [0.65, 0.55, 0.85, 0.6, 0.85],
    [0.75, 0.7, 0.75, 0.5, 0.95],
    [0.6, 0.6, 0.8, 0.45, 0.9],
  ]);

  test('make a cut in points with its standard error', () => {
    expect(cut.sums).toEqual([3.55, 3.5, 3.65, 3.35].map((sum) => expect.closeTo(sum, 12)));
    expect(cut.points).toBeCloseTo(3.5125, 12);
    expect(cut.standardError).toBeCloseTo(0.0625, 12);
    expect(cut.means).toEqual([0.675, 0.6125, 0.8, 0.525, 0.9].map((mean) => expect.closeTo(mean, 12)));
  });

  test('which is carried to the scale of ability', () => {
    const models = [-0.8, -0.3, -1.4, 0.2, -2].map((difficulty) => choice(difficulty));
    const { theta = Number.NaN, standardError } = cutOnScale(models, cut);
    expect(theta).toBeCloseTo(0.120635, 6);
    // By hand: the slope of the curve is the sum of P(1 − P) there.
    const slope = [-0.8, -0.3, -1.4, 0.2, -2].reduce((sum, b) => sum + sigmoid(theta - b) * sigmoid(b - theta), 0);
    expect(standardError).toBeCloseTo(0.0625 / slope, 9);
  });
});

test('a task of several points counts by its expected points', () => {
  // Reference page 2.2, at ability 0: chances of 0…2 and 0…3 points, their means and (slope of the curve) variances.
  const points = 0.50648 + 2 * 0.307196 + 0.370673 + 2 * 0.303482 + 3 * 0.10102;
  const { theta, standardError } = cutOnScale([steps(-1, 0.5), steps(-0.5, 0.2, 1.1)], { points, standardError: 0.1 });
  expect(theta).toBeCloseTo(0, 5);
  expect(standardError).toBeCloseTo(0.1 / (0.47891 + 0.853596), 5);
});

test('what can be guessed counts as earned', () => {
  // By hand: at the difficulty itself a task with four options is right 1/4 + 3/4 · 1/2 of the times.
  const { theta } = cutOnScale([choice(0.7, { floor: 0.25 })], { points: 0.625, standardError: undefined });
  expect(theta).toBeCloseTo(0.7, 9);
});

test('a cut that nobody would miss or nobody could reach has no place on the scale', () => {
  const models = [choice(0, { floor: 0.25 }), choice(0, { floor: 0.25 })];
  expect(cutOnScale(models, { points: 0.5, standardError: 0.1 })).toEqual({ why: 'below-scale' });
  expect(cutOnScale(models, { points: 2, standardError: 0.1 })).toEqual({ why: 'above-scale' });
});

test('one judge has no standard error, and a judge who left a task out is refused', () => {
  const alone = rawCut([[0.5, 0.7]]);
  expect([alone.points, alone.standardError]).toEqual([1.2, undefined]);
  expect(() => rawCut([[0.5, 0.7], [0.5]])).toThrow(RangeError);
  expect(() => rawCut([])).toThrow(RangeError);
});

function sigmoid(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
