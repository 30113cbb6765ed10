import { describe, expect, test } from 'vitest';
import { chanceAtOrAbove, meanOf, priorOf, spreadOf } from '@/lib/competency/posterior';
import { type HalfLife, posteriorAt, tallyOf } from '@/lib/competency/tally';
import { choice } from '../../support/task-models';

const DAY = 86_400_000;

describe('five answers of different age', () => {
  // Reference page, section 1.6, option 1 (run): difficulty, score, age in days.
  const answers = [
    [0, 1, 400],
    [0.5, 1, 200],
    [0.3, 0, 90],
    [0.8, 1, 30],
    [1, 1, 3],
  ] as const;
  const now = 20_000 * DAY;
  /** Half-life in days; mean, spread and chance above 0.5. */
  const rows: readonly (readonly [HalfLife, number, number, number])[] = [
    [null, 0.990435, 0.697973, 0.759278],
    [180, 0.814401, 0.766047, 0.659945],
  ];

  test.each(rows)('half-life %s', (halfLife, mean, spread, above) => {
    const responses = answers.map(([difficulty, score, age]) => ({
      at: now - age * DAY,
      model: choice(difficulty),
      score,
      weight: 1,
    }));
    const posterior = posteriorAt(tallyOf(responses, halfLife), now, halfLife);
    expect(meanOf(posterior)).toBeCloseTo(mean, 6);
    expect(spreadOf(posterior)).toBeCloseTo(spread, 6);
    expect(chanceAtOrAbove(posterior, 0.5)).toBeCloseTo(above, 6);
  });
});

test('a normal prior has its mean, its spread and its chance above a cut', () => {
  // Reference page 1.6, option 2 (run): m = 1.2, s = 0.4: P(θ > 0.5) = 0.959941; analytic, the normal distribution.
  const prior = posteriorAt(tallyOf([], null), 0, null, priorOf(1.2, 0.4));
  expect(meanOf(prior)).toBeCloseTo(1.2, 9);
  expect(spreadOf(prior)).toBeCloseTo(0.4, 9);
  // Half a share at the cut errs by step² / 12 · slope of the density: 0.0002 · 0.94.
  expect(Math.abs(chanceAtOrAbove(prior, 0.5) - 0.959941)).toBeLessThan(2.5e-4);
});
