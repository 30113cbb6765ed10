import { describe, expect, test } from 'vitest';
import { classificationAt, classify } from '@/lib/competency/classification';
import { normalConsistency } from '@/lib/competency/consistency';
import { effectiveLength, type ObservedScores, type TrueScores, trueScoresOf } from '@/lib/competency/true-scores';

describe('agreement of parallel forms, normal scores', () => {
  // Peng & Subkoviak 1980; computed with the R package mvtnorm (run). 0.67 and 0.86 at z = 0 are in Subkoviak's table of 1988
  // (from memory).
  const rows = [
    [0, 0.5, 0.6667, 0.3333],
    [0, 0.7, 0.7468, 0.4936],
    [0, 0.8, 0.7952, 0.5903],
    [0, 0.9, 0.8564, 0.7129],
    [0.5, 0.5, 0.7096, 0.3193],
    [0.5, 0.7, 0.7781, 0.48],
    [0.5, 0.8, 0.82, 0.5782],
    [0.5, 0.9, 0.8736, 0.7037],
    [1, 0.5, 0.8077, 0.2798],
    [1, 0.7, 0.8506, 0.4406],
    [1, 0.8, 0.878, 0.5429],
    [1, 0.9, 0.9137, 0.6766],
    [1.5, 0.5, 0.903, 0.2223],
    [1.5, 0.7, 0.9227, 0.3802],
    [1.5, 0.8, 0.9361, 0.4875],
    [1.5, 0.9, 0.9543, 0.6333],
  ] as const;

  test.each(rows)('cut at z = %d, reliability %d', (z, reliability, agreement, kappa) => {
    const found = normalConsistency(z, reliability);
    expect(found.agreement).toBeCloseTo(agreement, 4);
    expect(found.kappa).toBeCloseTo(kappa, 4);
  });

  test.each([0, 0.3, 0.6, 0.95, 1])(
    'a cut at the mean with reliability %d: one half and asin(r) / π',
    (reliability) => {
      // Sheppard 1899 (from memory), exact.
      expect(normalConsistency(0, reliability).agreement).toBeCloseTo(0.5 + Math.asin(reliability) / Math.PI, 7);
    },
  );

  test('a cut below the mean agrees like one as far above it, and without reliability by chance alone', () => {
    expect(normalConsistency(-1.2, 0.8).agreement).toBeCloseTo(normalConsistency(1.2, 0.8).agreement, 9);
    expect(normalConsistency(0.7, 0).kappa).toBeCloseTo(0, 6);
    expect(normalConsistency(0.7, 1).agreement).toBeCloseTo(1, 6);
  });
});

describe('accuracy and consistency of 1,002 people on 20 tasks', () => {
  // Reference page, section 2.4: R package betafunctions 1.9.0, `LL.CA` (run).
  const counts = [0, 0, 1, 2, 4, 8, 14, 23, 35, 49, 66, 83, 98, 110, 115, 113, 101, 82, 57, 31, 10];
  const points = counts.flatMap((count, score) => new Array<number>(count).fill(score));
  // KR-21 with the sample variance.
  const observed = { points, highest: 20, reliability: 0.6291297352544465 };

  test('the form is worth 20 equal tasks', () => {
    expect(effectiveLength(observed)).toBeCloseTo(20, 6);
  });

  test('four moments leave 0…1, so that two are fitted', () => {
    const { alpha = Number.NaN, beta = Number.NaN, low, high } = trueScoresOf(observed) ?? {};
    expect([low, high]).toEqual([0, 1]);
    // The package takes x (x − 1) of a score of 2 for 0 where it is 2: with one such person it prints 7.864427 and 3.950785.
    const second = (total: number) => total / points.length / (20 * 19);
    const pairs = points.reduce((sum, score) => sum + score * (score - 1), 0);
    expect(twoMoments(second(pairs))).toEqual([expect.closeTo(alpha, 9), expect.closeTo(beta, 9)]);
    expect(twoMoments(second(pairs - 2))).toEqual([expect.closeTo(7.864427, 6), expect.closeTo(3.950785, 6)]);
  });

  function twoMoments(second: number): [number, number] {
    const mean = points.reduce((sum, score) => sum + score, 0) / points.length / 20;
    const sum = (mean * (1 - mean)) / (second - mean ** 2) - 1;
    return [mean * sum, (1 - mean) * sum];
  }

  /** Points that pass; accuracy, agreement, chance, kappa. */
  const rows = [
    [13, 0.800764, 0.737434, 0.527253, 0.444596],
    [14, 0.787845, 0.722869, 0.500107, 0.445619],
  ] as const;

  test.each(rows)('passing at %i, by the printed distribution', (cut, ...published) => {
    const found = classify(cut / 20, { alpha: 7.864427, beta: 3.950785, low: 0, high: 1 }, 20);
    const printed = published.map((one) => expect.closeTo(one, 6));
    expect([found.accuracy, found.agreement, found.chance, found.kappa]).toEqual(printed);
  });

  test.each(rows)('passing at %i, by the one fitted here', (cut, ...published) => {
    const found = classificationAt(cut, observed);
    // The person with 2 points moves them by up to 0.00007.
    for (const [at, one] of [found?.accuracy, found?.agreement, found?.chance, found?.kappa].entries())
      expect(Math.abs((one ?? Number.NaN) - (published[at] ?? Number.NaN))).toBeLessThan(1e-4);
  });

  test('each share by itself, passing at 14', () => {
    const found = classify(0.7, { alpha: 7.864427, beta: 3.950785, low: 0, high: 1 }, 20);
    expect([found.bothBelow, found.bothAbove, found.falseBelow, found.falseAbove]).toEqual(
      [0.42613, 0.361715, 0.066555, 0.1456].map((one) => expect.closeTo(one, 6)),
    );
  });
});

describe('true scores that are known', () => {
  test('four moments find all four parameters again', () => {
    // Analytic: as many of a million people have each score as a beta-binomial distribution of 12 tasks says, rounded to
    // whole people.
    const known = { alpha: 3, beta: 2, low: 0.2, high: 0.9 };
    const found = trueScoresOf(formOf(known, 12, 1_000_000));
    expect(found?.alpha).toBeCloseTo(known.alpha, 1);
    expect(found?.beta).toBeCloseTo(known.beta, 1);
    expect(found?.low).toBeCloseTo(known.low, 2);
    expect(found?.high).toBeCloseTo(known.high, 2);
  });

  test('points that spread no more than chance makes them have none', () => {
    // By hand: all have the true score 1/2; of four tasks, people by their number right as 1 4 6 4 1.
    const points = [1, 4, 6, 4, 1].flatMap((count, score) => new Array<number>(count).fill(score));
    expect(trueScoresOf({ points, highest: 4, reliability: -0.1 })).toBeUndefined();
    expect(classificationAt(3, { points, highest: 4, reliability: -0.1 })).toBeUndefined();
  });
});

function formOf({ alpha, beta, low, high }: TrueScores, tasks: number, people: number): ObservedScores {
  const at = Array.from({ length: 4000 }, (_, place) => (place + 0.5) / 4000);
  const density = at.map((part) => part ** (alpha - 1) * (1 - part) ** (beta - 1));
  const all = sum(density);
  const counts = Array.from({ length: tasks + 1 }, (_, right) => {
    const chance = (score: number) => choices(tasks, right) * score ** right * (1 - score) ** (tasks - right);
    return Math.round(
      (people / all) * sum(at.map((part, place) => (density[place] as number) * chance(low + (high - low) * part))),
    );
  });
  const points = counts.flatMap((count, score) => new Array<number>(count).fill(score));
  const mean = sum(points) / points.length;
  const variance = sum(points.map((one) => (one - mean) ** 2)) / (points.length - 1);
  // KR-21, which makes the effective length that of the form.
  const reliability = (tasks / (tasks - 1)) * (1 - (mean * (tasks - mean)) / (tasks * variance));
  return { points, highest: tasks, reliability };
}

function choices(of: number, taken: number): number {
  return taken === 0 ? 1 : (choices(of, taken - 1) * (of - taken + 1)) / taken;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
