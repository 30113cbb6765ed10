import { describe, expect, test } from 'vitest';
import { GRID } from '@/lib/competency/grid';
import {
  chanceAtOrAbove,
  meanOf,
  neutralPrior,
  type Posterior,
  posteriorFrom,
  spreadOf,
} from '@/lib/competency/posterior';
import { posteriorAt, tallyOf } from '@/lib/competency/tally';
import { chance, information, type TaskModel } from '@/lib/competency/task-model';
import { choice, steps } from '../../support/task-models';

/*
 * Reference page, section 2.2: items whose difficulties are given, abilities normal with mean 0 and spread 1. Computed with
 * the R package catR 3.17 (`thetaEst`, D = 1, 121 points on −6…6) and with an independent grid code that agrees to six
 * decimals (both run).
 */

function after(scored: readonly (readonly [TaskModel, number])[]): Posterior {
  const responses = scored.map(([model, score]) => ({ at: 0, model, score, weight: 1 }));
  return posteriorAt(tallyOf(responses, null), 0, null);
}

describe('five items of difficulty −2, −1, 0, 1, 2', () => {
  /** Number right; mean, spread and chance above 0.5. */
  const rows = [
    [0, -1.405119, 0.767096, 0.005678],
    [1, -0.83077, 0.750194, 0.037028],
    [2, -0.274968, 0.742225, 0.147822],
    [3, 0.274968, 0.742225, 0.37974],
    [4, 0.83077, 0.750194, 0.668805],
    [5, 1.405119, 0.767096, 0.882327],
  ] as const;

  test.each(rows)('%i right', (right, mean, spread, above) => {
    const posterior = after([-2, -1, 0, 1, 2].map((difficulty, at) => [choice(difficulty), Number(at < right)]));
    expect(meanOf(posterior)).toBeCloseTo(mean, 6);
    expect(spreadOf(posterior)).toBeCloseTo(spread, 6);
    expect(chanceOnEverySecondPoint(posterior, 0.5)).toBeCloseTo(above, 6);
    // Half a share at a jump errs by step² / 12 · slope of the density, at most 0.5 here: 0.0004 on their grid, 0.0001 on ours.
    expect(Math.abs(chanceAtOrAbove(posterior, 0.5) - above)).toBeLessThan(0.0005);
  });
});

describe('four items with slopes of their own', () => {
  const items = [choice(-1, { slope: 0.8 }), choice(-0.3, { slope: 1.2 }), choice(0.4, { slope: 1.5 }), choice(1.2)];
  const rows = [
    ['1100', -0.028762, 0.700936],
    ['1010', 0.118033, 0.698405],
    ['0110', 0.31287, 0.698006],
    ['1111', 1.227178, 0.738615],
    ['0000', -1.08254, 0.762448],
  ] as const;

  test.each(rows)('%s', (pattern, mean, spread) => {
    const posterior = after(items.map((item, at) => [item, Number(pattern[at])]));
    expect(meanOf(posterior)).toBeCloseTo(mean, 6);
    expect(spreadOf(posterior)).toBeCloseTo(spread, 6);
  });

  test.each([
    [0, [0.1369022, 0.3485834, 0.5147645, 0.1778944]],
    [0.5, [0.1138524, 0.288312, 0.5593478, 0.2217129]],
  ])('information at %d', (theta, published) => {
    expect(items.map((item) => information(item, theta))).toEqual(published.map((one) => expect.closeTo(one, 7)));
  });
});

describe('two items of several points, partial credit', () => {
  const [a, b] = [steps(-1, 0.5), steps(-0.5, 0.2, 1.1)];
  const curves = [
    [-1, a, [0.449816, 0.449816, 0.100368], 0.428069],
    [-1, b, [0.552003, 0.334807, 0.100842, 0.012349], 0.520368],
    [0, a, [0.186324, 0.50648, 0.307196], 0.47891],
    [0, b, [0.224825, 0.370673, 0.303482, 0.10102], 0.853596],
    [1, a, [0.048611, 0.359188, 0.592201], 0.345322],
    [1, b, [0.040848, 0.183069, 0.407427, 0.368656], 0.704324],
  ] as const;

  test.each(curves)('at %d, %j', (theta, model, chances, told) => {
    expect(chances.map((_, score) => chance(model, score, theta))).toEqual(
      chances.map((one) => expect.closeTo(one, 6)),
    );
    expect(information(model, theta)).toBeCloseTo(told, 6);
  });

  const rows = [
    [0, 0, -1.185173, 0.740368],
    [1, 2, 0.267258, 0.678078],
    [2, 1, 0.267258, 0.678078],
    [2, 3, 1.242946, 0.731178],
  ] as const;

  test.each(rows)('scores %i and %i', (first, second, mean, spread) => {
    const posterior = after([
      [a, first],
      [b, second],
    ]);
    expect(meanOf(posterior)).toBeCloseTo(mean, 6);
    expect(spreadOf(posterior)).toBeCloseTo(spread, 6);
  });
});

describe('two items of several points, graded responses', () => {
  /*
   * Another law, which only stands here: P(k or more) = σ(a (θ − b_k)). The posterior takes whatever log chances it is given.
   */
  const a = { slope: 1.5, thresholds: [-1, 0.5] };
  const b = { slope: 1, thresholds: [-0.5, 0.2, 1.1] };
  const rows = [
    [0, 0, -1.086175, 0.780032],
    [1, 2, 0.039447, 0.680229],
    [2, 1, 0.48604, 0.734648],
    [2, 3, 1.035889, 0.785918],
  ] as const;

  test.each(rows)('scores %i and %i', (first, second, mean, spread) => {
    const logs = GRID.map((theta) => Math.log(gradedChance(a, first, theta) * gradedChance(b, second, theta)));
    const posterior = posteriorFrom(neutralPrior, logs);
    expect(meanOf(posterior)).toBeCloseTo(mean, 6);
    expect(spreadOf(posterior)).toBeCloseTo(spread, 6);
  });
});

function gradedChance({ slope, thresholds }: { slope: number; thresholds: number[] }, score: number, theta: number) {
  const orMore = (least: number) => {
    if (least === 0) return 1;
    const threshold = thresholds[least - 1];
    return threshold === undefined ? 0 : 1 / (1 + Math.exp(-slope * (theta - threshold)));
  };
  return orMore(score) - orMore(score + 1);
}

/** As their grid of 121 points has it, on which 0.5 is a point as well. */
function chanceOnEverySecondPoint(posterior: Posterior, cut: number): number {
  let [above, all] = [0, 0];
  for (let at = 0; at < GRID.length; at += 2) {
    const [theta, share] = [GRID[at] as number, posterior[at] as number];
    all += share;
    above += theta > cut ? share : theta === cut ? share / 2 : 0;
  }
  return above / all;
}
