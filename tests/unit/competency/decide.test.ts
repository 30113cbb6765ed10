import { describe, expect, test } from 'vitest';
import { decideAll, decideTopic, evidenceAt, whenItLapses } from '@/lib/competency/decide';
import { tallyOf } from '@/lib/competency/tally';
import { weightOf } from '@/lib/competency/weights';
import { choice } from '../../support/task-models';

const rule = { confidence: 0.95, refuse: 0.05, minimum: 8 };
const DAY = 86_400_000;

describe('on one topic', () => {
  test.each([
    [0.95, 8, 'ready'],
    [0.9499, 8, 'not-enough-evidence'],
    [0.999, 7, 'not-enough-evidence'],
    [0.05, 8, 'not-yet'],
    [0.0501, 30, 'not-enough-evidence'],
    [0.001, 7, 'not-enough-evidence'],
  ] as const)('a chance of %d after %i responses: %s', (chance, count, decision) => {
    expect(decideTopic({ chance, count }, rule)).toBe(decision);
  });

  test('a low cut that the prior passes is nothing that anybody has shown', () => {
    const evidence = evidenceAt(tallyOf([], 180), 0, { cut: -2.5, halfLifeDays: 180 });
    expect(evidence.chance).toBeGreaterThan(0.99);
    expect(decideTopic(evidence, rule)).toBe('not-enough-evidence');
  });
});

describe('on several topics that are all required', () => {
  test.each([
    [['ready', 'ready'], 'ready'],
    [['ready', 'not-enough-evidence'], 'not-enough-evidence'],
    [['not-enough-evidence', 'not-yet', 'ready'], 'not-yet'],
    [[], 'not-enough-evidence'],
  ] as const)('%j: %s', (each, decision) => {
    expect(decideAll(each)).toBe(decision);
  });
});

describe('lapsing', () => {
  const from = 20_000 * DAY;
  const shown = tallyOf(
    Array.from({ length: 12 }, () => ({ at: from, model: choice(0.8), score: 1, weight: 1 })),
    90,
  );
  const scale = { cut: 0.5, halfLifeDays: 90 };

  test('is the first day on which the chance is too low', () => {
    const lapse = whenItLapses(shown, rule, scale, { from, horizonDays: 365 });
    expect(lapse).toBeGreaterThan(from);
    if (lapse === null) throw new Error('Never lapses');
    expect(evidenceAt(shown, lapse - DAY, scale).chance).toBeGreaterThanOrEqual(0.95);
    expect(evidenceAt(shown, lapse, scale).chance).toBeLessThan(0.95);
  });

  test('comes too where somebody would be ready again once all has faded', () => {
    // The prior alone gives 0.919 to be above −1.4; nine of 24 right give 0.912 now and 0.89 in three months.
    const mixed = tallyOf(
      Array.from({ length: 24 }, (_, at) => ({ at: from, model: choice(-0.5), score: Number(at < 9), weight: 1 })),
      60,
    );
    const low = { cut: -1.4, halfLifeDays: 60 };
    const lenient = { confidence: 0.9, refuse: 0.05, minimum: 8 };
    const days = [0, 90, 365].map((day) => decideTopic(evidenceAt(mixed, from + day * DAY, low), lenient));
    expect(days).toEqual(['ready', 'not-enough-evidence', 'ready']);
    const lapse = whenItLapses(mixed, lenient, low, { from, horizonDays: 365 });
    expect(lapse).toBeGreaterThan(from + 10 * DAY);
    expect(lapse).toBeLessThan(from + 60 * DAY);
    expect(whenItLapses(mixed, lenient, low, { from, horizonDays: 10 })).toBeNull();
  });

  test('does not come where nothing fades, within a short horizon, or to somebody who is not ready', () => {
    const far = { from, horizonDays: 3650 };
    expect(whenItLapses(shown, rule, { ...scale, halfLifeDays: null }, far)).toBeNull();
    expect(whenItLapses(shown, rule, { ...scale, halfLifeDays: Number.POSITIVE_INFINITY }, far)).toBeNull();
    expect(whenItLapses(shown, rule, scale, { from, horizonDays: 1 })).toBeNull();
    expect(whenItLapses(shown, rule, { ...scale, cut: 3 }, far)).toBeNull();
  });
});

test.each([
  [0, 0, 1],
  [1, 0, 0.5],
  [2, 0, 0.25],
  [7, 0, 0.25],
  [0, 1, 0],
  [3, 2, 0],
])('%i hints, answered %i times before: counts %d', (hints, earlier, weight) => {
  expect(weightOf({ hints, earlier })).toBe(weight);
});
