import { describe, expect, test } from 'vitest';
import { type MarkPair, quadraticKappa } from '@/lib/statistics/kappa';
import { tableKappa } from '../support/table-kappa';

/** Pairs that a table of counts stands for: rows the first marker, columns the second. */
function pairsOf(table: readonly (readonly number[])[]): MarkPair[] {
  return table.flatMap((row, one) => row.flatMap((count, other) => new Array(count).fill([one, other])));
}

const linear = (one: number, other: number) => Math.abs(one - other);
const quadratic = (one: number, other: number) => (one - other) ** 2;
const anyDifference = (one: number, other: number) => Number(one !== other);

describe('published agreement', () => {
  test('of two raters who said yes or no, with its standard error', () => {
    // R package statpsych, documentation of `ci.kappa(.05, 31, 12, 4, 58)`, Cohen's kappa (seen). With two marks every
    // weighting is the same.
    const { kappa, standardError } = expectAgreement([
      [31, 12],
      [4, 58],
    ]);
    expect(kappa).toBeCloseTo(0.6756757, 7);
    expect(standardError).toBeCloseTo(0.07344761, 8);
  });

  test('of two raters of anxiety, squared weights', () => {
    // R package irr, `kappa2(anxiety[,2:3], "squared")` = 0.2520325, as the tests of statsmodels quote it (seen). irr leaves
    // out the level that neither rater used, so that its levels are the ranks 0…4.
    const second = [3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4];
    const third = [2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2];
    const rank = (level: number) => [1, 2, 3, 4, 6].indexOf(level);
    const { kappa } = quadraticKappa(second.map((level, at) => [rank(level), rank(third[at] ?? 0)]));
    expect(kappa).toBeCloseTo(0.2520325, 7);
  });
});

describe('the table formula of Fleiss, Cohen & Everitt', () => {
  const table = [
    [0, 4, 1],
    [0, 8, 0],
    [0, 1, 5],
  ];

  test('gives what SAS printed, unweighted and with linear weights', () => {
    // SAS FREQ as the tests of statsmodels quote it (seen): 0.4842 with 0.1380, and 0.4701 with 0.1457.
    expect(tableKappa(table, anyDifference)).toEqual([expect.closeTo(0.4842, 4), expect.closeTo(0.138, 4)]);
    expect(tableKappa(table, linear)).toEqual([expect.closeTo(0.4701, 4), expect.closeTo(0.1457, 4)]);
  });

  test('gives with quadratic weights what we find without a table', () => {
    const { kappa, standardError } = expectAgreement(table);
    expect([kappa, standardError]).toEqual(tableKappa(table, quadratic).map((value) => expect.closeTo(value, 12)));
  });
});

test('four answers by hand', () => {
  // Derived: marks (0,0) (1,1) (2,1) (1,2). Mean squared difference 1/2; means 1 and 1, variances 1/2 and 1/2, so that chance
  // gives 1 and kappa is 1/2. Each answer pulls by d² − ½·((x−1)² + (y−1)² + 1): −3/2, −1/2, 0, 0; variance 3/8; √(3/32).
  const found = quadraticKappa([
    [0, 0],
    [1, 1],
    [2, 1],
    [1, 2],
  ]);
  expect(found).toEqual({ kappa: 0.5, standardError: expect.closeTo(Math.sqrt(3 / 32), 12), answers: 4 });
});

function expectAgreement(table: readonly (readonly number[])[]) {
  const found = quadraticKappa(pairsOf(table));
  if (found.why !== undefined) throw new Error(found.why);
  return found;
}
