import { describe, expect, test } from 'vitest';
import { type RaschFit, raschFit } from '@/lib/statistics/rasch-mml';
import { lsatResponses } from './lsat';

/*
 * Five items of the Law School Admission Test, section 6 (Bock & Lieberman 1970), fitted by the R packages ltm 1.2-0
 * (`rasch(LSAT, constraint=cbind(6,1))`, `rasch(LSAT)`; printed to three or four decimals) and mirt 1.45.1 (61 nodes,
 * tolerance 1e-10): all run for the reference page, section 2.1.
 */

const near = (values: readonly number[], digits: number) => values.map((value) => expect.closeTo(value, digits));

function lsatFit(spread?: number): RaschFit {
  const found = raschFit(lsatResponses(), spread);
  if (found.why !== undefined) throw new Error(found.why);
  return found;
}

const difficulties = ({ items }: RaschFit) => items.map(({ difficulty }) => difficulty ?? Number.NaN);

describe('with abilities of spread 1', () => {
  const found = lsatFit(1);

  test('difficulties and their standard errors are those of ltm', () => {
    expect(difficulties(found)).toEqual(near([-2.872, -1.063, -0.2576, -1.3881, -2.2188], 3));
    const errors = found.items.map((item) => (item.why === undefined ? item.standardError : Number.NaN));
    expect(errors).toEqual(near([0.1287, 0.0821, 0.0766, 0.0865, 0.1048], 4));
  });

  test('so is the likelihood, and a spread that is given has no error', () => {
    expect(found.logLikelihood).toBeCloseTo(-2473.054, 3);
    expect([found.spread, found.spreadError]).toEqual([1, undefined]);
  });
});

describe('with a spread that is fitted', () => {
  const found = lsatFit();

  test('intercepts, spread and likelihood are those of mirt', () => {
    expect(difficulties(found)).toEqual(near([-2.73001, -0.99861, -0.23985, -1.30645, -2.0994], 4));
    expect(found.spread).toBeCloseTo(0.75513463, 5);
    expect(found.spread ** 2).toBeCloseTo(0.57, 3);
    expect(found.logLikelihood).toBeCloseTo(-2466.9376, 4);
  });

  test('standard errors are those of ltm, carried over to its scale', () => {
    expect(found.spreadError).toBeCloseTo(0.0694, 4);
    // ltm counts abilities in spreads: its b is our difficulty over the spread, and its error follows by the delta method.
    const at = (row: number, column: number) => found.covariance[row * 6 + column] ?? Number.NaN;
    const scaled = difficulties(found).map((difficulty, item) => {
      const b = difficulty / found.spread;
      return [b, Math.sqrt(at(item, item) - 2 * b * at(item, 5) + b * b * at(5, 5)) / found.spread] as const;
    });
    expect(scaled.map(([b]) => b)).toEqual(near([-3.61527, -1.32242, -0.31763, -1.73009, -2.78017], 4));
    expect(scaled.map(([, error]) => error)).toEqual(near([0.3266, 0.1422, 0.0977, 0.1691, 0.251], 3));
  });

  test('differences of difficulties come near those of conditional maximum likelihood', () => {
    // R package eRm, difficulties that sum to zero; the reference page: centred intercepts agree to 0.001–0.002.
    const all = difficulties(found);
    const centre = all.reduce((sum, one) => sum + one, 0) / 5;
    expect(all.map((one) => one - centre)).toEqual(near([-1.25613, 0.47491, 1.23598, 0.16841, -0.62317], 2));
  });
});
