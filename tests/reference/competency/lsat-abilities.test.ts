import { describe, expect, test } from 'vitest';
import { GRID } from '@/lib/competency/grid';
import { meanOf, neutralPrior, posteriorFrom, spreadOf } from '@/lib/competency/posterior';
import { tallyOf } from '@/lib/competency/tally';
import type { TaskModel } from '@/lib/competency/task-model';
import { raschFit } from '@/lib/statistics/rasch-mml';
import { factorInPlace, inverseFactored, solveFactored } from '@/lib/statistics/symmetric';
import { choice } from '../../support/task-models';
import { lsatResponses } from '../lsat';
import { lsatPatterns, lsatTwoPl } from './lsat-patterns';

const prior = posteriorFrom(neutralPrior, new Float64Array(GRID.length));

function logLikelihoodOf(models: readonly TaskModel[], pattern: string): Float64Array {
  const responses = models.map((model, item) => ({ at: 0, model, score: Number(pattern[item]), weight: 1 }));
  return tallyOf(responses, null).sum;
}

/** Chance of a pattern, whoever answers. */
function chanceOf(models: readonly TaskModel[], pattern: string): number {
  return logLikelihoodOf(models, pattern).reduce((sum, log, at) => sum + (prior[at] as number) * Math.exp(log), 0);
}

function expectPublished(
  models: readonly TaskModel[],
  pattern: string,
  [count, mean, spread]: readonly number[],
): void {
  const posterior = posteriorFrom(neutralPrior, logLikelihoodOf(models, pattern));
  // Printed to four and three decimals, from parameters to five.
  expect(Math.abs(meanOf(posterior) - (mean ?? Number.NaN))).toBeLessThan(1e-4);
  expect(Math.abs(spreadOf(posterior) - (spread ?? Number.NaN))).toBeLessThan(1e-4);
  expect(Math.abs(1000 * chanceOf(models, pattern) - (count ?? Number.NaN))).toBeLessThan(2e-3);
}

describe('one slope for all items, fitted here', () => {
  const fit = raschFit(lsatResponses());
  if (fit.why !== undefined) throw new Error(fit.why);
  // Abilities have spread 1 on the scale of the table; the fit has slope 1 and finds their spread.
  const models = fit.items.map(({ difficulty = Number.NaN }) => choice(difficulty / fit.spread, { slope: fit.spread }));

  test.each(lsatPatterns)('$pattern', ({ pattern, onePl }) => {
    expectPublished(models, pattern, onePl);
  });
});

describe('a slope for each item, as published', () => {
  const models = modelsOf([...lsatTwoPl.slopes, ...lsatTwoPl.intercepts]);

  test.each(lsatPatterns)('$pattern', ({ pattern, twoPl }) => {
    expectPublished(models, pattern, twoPl);
  });

  test('the answers are as likely as published', () => {
    expect(likelihoodOf([...lsatTwoPl.slopes, ...lsatTwoPl.intercepts])).toBeCloseTo(lsatTwoPl.logLikelihood, 4);
  });

  test('nowhere near are they likelier: the likelihood is flat there, and as curved as the published errors say', () => {
    const { gradient, curvature } = slopesAt([...lsatTwoPl.slopes, ...lsatTwoPl.intercepts]);
    expect(factorInPlace(curvature, 10)).toBe(true);
    // Newton's step to the top is no more than what printing to five decimals left out.
    for (const move of solveFactored(curvature, gradient)) expect(Math.abs(move)).toBeLessThan(2e-5);
    const covariance = inverseFactored(curvature, 10);
    const errors = lsatTwoPl.slopes.map((_, item) => Math.sqrt(covariance[item * 10 + item] as number));
    expect(errors).toEqual(lsatTwoPl.slopeErrors.map((error) => expect.closeTo(error, 3)));
  });
});

function modelsOf(parameters: readonly number[]): TaskModel[] {
  return parameters.slice(0, 5).map((slope, item) => choice(-(parameters[5 + item] as number) / slope, { slope }));
}

/** @param parameters  Slopes, then intercepts. */
function likelihoodOf(parameters: readonly number[]): number {
  const models = modelsOf(parameters);
  return lsatPatterns.reduce((sum, { pattern, observed }) => sum + observed * Math.log(chanceOf(models, pattern)), 0);
}

/** By differences: errors of the order of step² in the slope and of rounding / step² in the curvature, both below 1e-3. */
const STEP = 1e-3;

function slopesAt(parameters: readonly number[]): { gradient: Float64Array; curvature: Float64Array } {
  const at = (...moves: readonly (readonly [number, number])[]) => {
    const moved = [...parameters];
    for (const [place, by] of moves) moved[place] = (moved[place] as number) + by * STEP;
    return likelihoodOf(moved);
  };
  const size = parameters.length;
  const gradient = Float64Array.from(parameters, (_, one) => (at([one, 1]) - at([one, -1])) / (2 * STEP));
  const curvature = new Float64Array(size * size);
  for (let one = 0; one < size; one++)
    for (let other = 0; other <= one; other++) {
      const alike = at([one, 1], [other, 1]) + at([one, -1], [other, -1]);
      const apart = at([one, 1], [other, -1]) + at([one, -1], [other, 1]);
      curvature[one * size + other] = -(alike - apart) / (4 * STEP ** 2);
    }
  return { gradient, curvature };
}
