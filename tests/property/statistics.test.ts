import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemStatistics } from '@/lib/statistics/item-statistics';
import { type MarkPair, quadraticKappa } from '@/lib/statistics/kappa';
import { reliabilityOf } from '@/lib/statistics/reliability';
import { responsesFrom } from '@/lib/statistics/responses';
import type { Statistic } from '@/lib/statistics/statistic';

const runs = { numRuns: 200, seed: 20_261_127 };
type Rows = (number | undefined)[][];

const rowsOf = (score: fc.Arbitrary<number | undefined>, least: number) =>
  fc
    .tuple(fc.integer({ min: least, max: 7 }), fc.integer({ min: least, max: 15 }))
    .chain(([items, people]) =>
      fc.array(fc.array(score, { minLength: items, maxLength: items }), { minLength: people, maxLength: people }),
    );
const anyRows: fc.Arbitrary<Rows> = rowsOf(fc.constantFrom(0, 0.25, 0.5, 1, undefined), 1);
const rightOrWrong: fc.Arbitrary<number[][]> = rowsOf(fc.constantFrom(0, 1), 2) as fc.Arbitrary<number[][]>;
/** The same things in another order: the n-th key says who comes n-th. */
const keys = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 20, maxLength: 20 });
const shuffled = <T>(list: readonly T[], by: readonly number[]) =>
  [...list.keys()].sort((a, b) => (by[a] ?? 0) - (by[b] ?? 0)).map((at) => list[at] as T);

function expectSame<Why extends string>(one: Statistic<Why> | undefined, other: Statistic<Why> | undefined): void {
  expect(one?.why).toBe(other?.why);
  if (one?.value !== undefined) expect(one.value).toBeCloseTo(other?.value ?? Number.NaN, 9);
}

describe('item statistics', () => {
  test('do not depend on the order of people or of items', () => {
    fc.assert(
      fc.property(anyRows, keys, keys, (rows, byPeople, byItems) => {
        const mixed = shuffled(rows, byPeople).map((row) => shuffled(row, byItems));
        const before = shuffled(itemStatistics(responsesFrom(rows)), byItems);
        const after = itemStatistics(responsesFrom(mixed));
        for (const [at, item] of after.entries()) {
          expect([item.people, item.pairs]).toEqual([before[at]?.people, before[at]?.pairs]);
          expectSame(item.difficulty, before[at]?.difficulty);
          expectSame(item.discrimination, before[at]?.discrimination);
        }
        const [one, other] = [reliabilityOf(responsesFrom(rows)), reliabilityOf(responsesFrom(mixed))];
        expectSame(one.alpha, other.alpha);
        expectSame(one.errorOfMeasurement, other.errorOfMeasurement);
      }),
      runs,
    );
  });

  test('are numbers or codes, never NaN, and lie where they may', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        const responses = responsesFrom(rows);
        for (const { difficulty, discrimination } of itemStatistics(responses)) {
          if (difficulty.why === undefined) expect(difficulty.value >= 0 && difficulty.value <= 1).toBe(true);
          if (discrimination.why === undefined) expect(Math.abs(discrimination.value) <= 1).toBe(true);
        }
        const { alpha, errorOfMeasurement, without } = reliabilityOf(responses);
        for (const one of [alpha, ...without]) if (one.why === undefined) expect(one.value <= 1 + 1e-12).toBe(true);
        if (errorOfMeasurement.why === undefined) expect(Number.isFinite(errorOfMeasurement.value)).toBe(true);
      }),
      runs,
    );
  });

  test('correlate as Pearson has it, worked out the long way', () => {
    fc.assert(
      fc.property(rightOrWrong, (rows) => {
        for (const [item, { discrimination }] of itemStatistics(responsesFrom(rows)).entries()) {
          if (discrimination.value === undefined) continue;
          const own = rows.map((row) => row[item] as number);
          const rest = rows.map((row) => row.reduce((sum, score) => sum + score, 0) - (row[item] as number));
          expect(discrimination.value).toBeCloseTo(pearson(own, rest), 9);
        }
      }),
      runs,
    );
  });

  test('alpha of items right or wrong is KR-20, by population variances', () => {
    fc.assert(
      fc.property(rightOrWrong, (rows) => {
        const { coefficient, alpha } = reliabilityOf(responsesFrom(rows));
        expect(coefficient).toBe('kr-20');
        const sums = rows.map((row) => row.reduce((sum, score) => sum + score, 0));
        const variance = mean(sums.map((sum) => (sum - mean(sums)) ** 2));
        if (alpha.value === undefined) {
          expect(variance).toBeLessThan(1e-12);
          return;
        }
        const items = rows[0]?.length ?? 0;
        const shares = Array.from({ length: items }, (_, item) => mean(rows.map((row) => row[item] as number)));
        const ofItems = shares.reduce((sum, share) => sum + share * (1 - share), 0);
        expect(alpha.value).toBeCloseTo((items / (items - 1)) * (1 - ofItems / variance), 9);
      }),
      runs,
    );
  });
});

describe('kappa', () => {
  const marks: fc.Arbitrary<MarkPair[]> = fc.array(
    fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 })),
    {
      minLength: 2,
      maxLength: 30,
    },
  );

  test('is 1 without an error where both gave the same', () => {
    fc.assert(
      fc.property(marks, (pairs) => {
        const found = quadraticKappa(pairs.map(([mark]) => [mark, mark]));
        if (found.why === undefined) expect([found.kappa, found.standardError]).toEqual([1, 0]);
        else expect(new Set(pairs.map(([mark]) => mark)).size).toBe(1);
      }),
      runs,
    );
  });

  test('does not depend on who is first, on the order of answers, nor on where the scale begins and how wide it is', () => {
    fc.assert(
      fc.property(marks, (pairs) => {
        const found = quadraticKappa(pairs);
        const others = [
          pairs.map(([one, other]): MarkPair => [other, one]),
          [...pairs].reverse(),
          pairs.map(([one, other]): MarkPair => [3 + one / 2, 3 + other / 2]),
        ];
        for (const other of others.map(quadraticKappa)) {
          if (found.why !== undefined) expect(other.why).toBe(found.why);
          else if (other.why === undefined) {
            expect(other.kappa).toBeCloseTo(found.kappa, 9);
            expect(other.standardError).toBeCloseTo(found.standardError, 7);
          } else throw new Error(other.why);
        }
      }),
      runs,
    );
  });
});

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function pearson(one: readonly number[], other: readonly number[]): number {
  const [first, second] = [mean(one), mean(other)];
  const product = mean(one.map((value, at) => (value - first) * ((other[at] as number) - second)));
  const spread = mean(one.map((value) => (value - first) ** 2)) * mean(other.map((value) => (value - second) ** 2));
  return product / Math.sqrt(spread);
}
