import { describe, expect, test } from 'vitest';
import { GRID } from '@/lib/competency/grid';
import { chanceAtOrAbove, intervalOf, posteriorFrom, priorOf } from '@/lib/competency/posterior';
import { posteriorAt, tallyOf } from '@/lib/competency/tally';
import { taskModelSchema } from '@/lib/competency/task-model';
import { choice } from '../../support/task-models';

/** All at one point of the grid. */
const at = (theta: number) => Float64Array.from(GRID, (point) => Number(point === theta));

describe('a chance of being at a cut or above', () => {
  test('counts half of what lies on the cut', () => {
    expect(chanceAtOrAbove(at(0.5), 0.5)).toBe(0.5);
  });

  test('goes to all and to nothing within a step on either side', () => {
    expect(chanceAtOrAbove(at(0.5), 0.45)).toBeCloseTo(1, 12);
    expect(chanceAtOrAbove(at(0.5), 0.55)).toBeCloseTo(0, 12);
    // By hand: half a step beside its point, a triangle has an eighth of its area beyond.
    expect(chanceAtOrAbove(at(0.5), 0.525)).toBeCloseTo(1 / 8, 9);
    expect(chanceAtOrAbove(at(0.5), 0.475)).toBeCloseTo(7 / 8, 9);
  });

  test('is all below the grid and nothing above it, and half at its ends', () => {
    expect([-6.06, -6.5, -99].map((cut) => chanceAtOrAbove(at(-6), cut))).toEqual([1, 1, 1]);
    expect([6.06, 6.5, 99].map((cut) => chanceAtOrAbove(at(6), cut))).toEqual([0, 0, 0]);
    expect([chanceAtOrAbove(at(-6), -6), chanceAtOrAbove(at(6), 6)]).toEqual([0.5, 0.5]);
  });
});

test('an interval of a normal ability is that of the table of the normal distribution', () => {
  // Analytic: 5 % lie beyond 1.644854 on either side. The straight lines between points widen a spread of 0.5 by step² / 12 /
  // 0.5 = 0.0004.
  const { low, high } = intervalOf(posteriorFrom(priorOf(0.4, 0.5), new Float64Array(GRID.length)), 0.9);
  expect(Math.abs(low - (0.4 - 1.644854 * 0.5))).toBeLessThan(0.0007);
  expect(Math.abs(high - (0.4 + 1.644854 * 0.5))).toBeLessThan(0.0007);
});

test('a prior that is narrow and far from what was answered leaves no empty posterior', () => {
  const responses = Array.from({ length: 3000 }, () => ({ at: 0, model: choice(3), score: 1, weight: 1 }));
  const posterior = posteriorAt(tallyOf(responses, null), 0, null, priorOf(-3, 0.05));
  expect(posterior.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
});

describe('a task model', () => {
  test.each([
    { kind: 'choice', difficulty: 0.4, floor: 0.25, spread: 0.5 },
    { kind: 'choice', difficulty: -20, slope: 5, floor: 0, spread: 0 },
    { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5], spread: 0.5 },
  ])('%j is one', (model) => {
    expect(taskModelSchema.parse(model)).toEqual(model);
  });

  test.each([
    { kind: 'choice', difficulty: Number.NaN, floor: 0, spread: 0 },
    { kind: 'choice', difficulty: 0, floor: 1, spread: 0 },
    { kind: 'choice', difficulty: 0, slope: 0, floor: 0, spread: 0 },
    { kind: 'choice', difficulty: 0, floor: 0, spread: -1 },
    { kind: 'steps', steps: [], spread: 0 },
    { kind: 'steps', steps: [0, Number.POSITIVE_INFINITY], spread: 0 },
    { kind: 'guess', difficulty: 0 },
  ])('%j is none', (model) => {
    expect(taskModelSchema.safeParse(model).success).toBe(false);
  });

  test('at the ends of what a model may be, all stays within the range of numbers', () => {
    const extremes = [
      { kind: 'choice', difficulty: 20, slope: 5, floor: 0, spread: 0 },
      { kind: 'choice', difficulty: -20, slope: 5, floor: 0.99, spread: 0 },
      { kind: 'steps', steps: new Array(12).fill(20), spread: 3 },
      { kind: 'steps', steps: new Array(12).fill(-20), spread: 3 },
    ].map((model) => taskModelSchema.parse(model));
    for (const model of extremes)
      for (const score of model.kind === 'choice' ? [0, 1] : [0, 6, 12]) {
        const { sum } = tallyOf([{ at: 0, model, score, weight: 1 }], null);
        expect(sum.every(Number.isFinite)).toBe(true);
      }
  });
});
