import { describe, expect, test } from 'vitest';
import { itemFlags } from '@/lib/statistics/item-flags';
import { itemStatistics } from '@/lib/statistics/item-statistics';
import { reliabilityOf } from '@/lib/statistics/reliability';
import { responsesFrom } from '@/lib/statistics/responses';
import { timeQuantiles } from '@/lib/statistics/time-quantiles';
import { lsatResponses } from './lsat';

const near = (values: readonly number[], digits: number) => values.map((value) => expect.closeTo(value, digits));

describe('five items of the Law School Admission Test, section 6', () => {
  const lsat = lsatResponses();

  test('are as easy as published', () => {
    // Bock & Lieberman 1970; R package ltm, `descript(LSAT)` (seen).
    expect(itemStatistics(lsat).map(({ difficulty }) => difficulty.value)).toEqual(
      near([0.924, 0.709, 0.553, 0.763, 0.87], 12),
    );
  });

  test('correlate with the rest as published', () => {
    // ltm, `descript(LSAT)`, point-biserial with the item excluded (seen): four decimals.
    expect(itemStatistics(lsat).map(({ discrimination }) => discrimination.value)).toEqual(
      near([0.1128, 0.1532, 0.1728, 0.1444, 0.1216], 4),
    );
  });

  test('have the published KR-20, and without each item the published one', () => {
    // 0.2949972: R package psych 2.2.9 (run); the others: ltm `descript(LSAT)` (seen), four decimals.
    const { coefficient, alpha, without, people, leftOut, few } = reliabilityOf(lsat);
    expect({ coefficient, people, leftOut, few }).toEqual({
      coefficient: 'kr-20',
      people: 1000,
      leftOut: 0,
      few: false,
    });
    expect(alpha.value).toBeCloseTo(0.2949972, 7);
    expect(without.map(({ value }) => value)).toEqual(near([0.2754, 0.2376, 0.2168, 0.2459, 0.2663], 4));
  });
});

describe('ten people and ten items', () => {
  // K. Wuensch, East Carolina University, core.ecu.edu StatHelp/KR20.txt (seen): rows, totals, their population variance 5.84.
  const rows =
    '1111110110 1011011101 1111011001 0010001000 0000010010 1110111111 1101110111 1111111101 0101111101 1101101110';
  const published = responsesFrom(rows.split(' ').map((row) => [...row].map(Number)));

  test('have the KR-20 that the published variances give', () => {
    // 10/9 · (1 − 2.18/5.84) = 0.696347, by hand from the published values. 0.7378 would be two divisors in one formula.
    const { alpha, errorOfMeasurement, few } = reliabilityOf(published);
    expect(alpha.value).toBeCloseTo((10 / 9) * (1 - 2.18 / 5.84), 12);
    // By hand: the sample variance is 5.84 · 10/9.
    expect(errorOfMeasurement.value).toBeCloseTo(Math.sqrt(((5.84 * 10) / 9) * (1 - 0.696347)), 6);
    expect(few).toBe(true);
  });

  test('have the corrected correlations of another programme', () => {
    // R package psych 2.2.9, `alpha`, r.drop (run): six decimals.
    expect(itemStatistics(published).map(({ discrimination }) => discrimination.value)).toEqual(
      near([0.705889, 0.705889, 0, 0.473589, 0.583874, 0.286147, -0.027445, 0.705889, -0.123613, 0.475867], 6),
    );
  });

  test('items 7 and 9 run against the rest, as far as ten people can tell', () => {
    const negative = itemStatistics(published).flatMap((item, at) =>
      itemFlags(item).flatMap((flag) => (flag.code === 'negative-discrimination' ? [[at + 1, flag.beyondChance]] : [])),
    );
    expect(negative).toEqual([
      [7, false],
      [9, false],
    ]);
  });
});

test('a right answer correlates with the score as worked out by hand', () => {
  // Reference page 2.3, hand example: M1 = 7.5, M0 = 3.5, SD 2.211334, r = (M1 − M0)/SD · √(pq) = 0.886158. The other item is the score.
  const right = [1, 1, 1, 0, 1, 0, 0, 1, 0, 1];
  const score = [9, 8, 7, 3, 6, 4, 5, 8, 2, 7];
  const responses = responsesFrom(
    right.map((one, at) => [one, score[at]]),
    [1, 10],
  );
  expect(itemStatistics(responses)[0]?.discrimination.value).toBeCloseTo(0.886158, 6);
});

test('the quartiles of 1…10 are those of definition 7', () => {
  // R, `quantile(1:10)`: 3.25, 5.5, 7.75 (from memory); by hand 1 + 9/4, 1 + 9/2, 1 + 27/4.
  const times = Float64Array.of(3, 1, 10, 2, 9, 4, 8, 5, 7, 6);
  expect(timeQuantiles(times)).toEqual({ count: 10, lowerQuartile: 3.25, median: 5.5, upperQuartile: 7.75 });
});
