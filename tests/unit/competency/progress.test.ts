import { describe, expect, test } from 'vitest';
import type { Evidence } from '@/lib/competency/evidence';
import { againstLine, topicProgress } from '@/lib/competency/progress';
import { recentCasesOf, statesOf, weighed } from '@/lib/competency/states';
import { aResponse } from '../../support/graded-case';

const DAY = 86_400_000;
const { at } = aResponse;

const one = (n: number, changes: Partial<Evidence> = {}): Evidence => ({
  ...aResponse,
  ...{ topic: 'filtration', source: 'case', work: `attempt ${n}`, revision: 1, exposure: `case ${n}`, at: at + n },
  ...{ score: 4, model: { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5], spread: 0.5 }, safetyEvents: 0 },
  ...{ detail: { findings: [], share: 1, because: 'measured' } },
  ...changes,
});
const six = [1, 2, 3, 4, 5, 6].map((n) => one(n));
const shown = (responses: readonly Evidence[], days: number) =>
  topicProgress('filtration', weighed(responses), 180, at + days * DAY);

describe('what somebody has shown', () => {
  test('is where it lies, what it rests on, and nothing of what it does not', () => {
    const progress = shown([...six, one(7, { counts: false })], 0);
    expect(progress).toMatchObject({ responses: 6, cases: 6, meanShare: 1, newestAt: at + 6, before: null });
    expect(progress?.low).toBeGreaterThan(0);
    expect(shown([], 0)).toBeUndefined();
    expect(shown([one(1, { counts: false })], 0)).toBeUndefined();
  });

  test('fades with age alone, which is said with what it was', () => {
    const [fresh, old] = [shown(six, 0), shown(six, 360)];
    expect(old?.before).toMatchObject({ mean: expect.closeTo(fresh?.mean ?? 0, 6) });
    expect(old?.mean).toBeLessThan(fresh?.mean ?? 0);
    // Two half-lives: each counts a quarter.
    expect(old?.shown[0]?.counting).toBeCloseTo(0.25, 6);
  });

  test('lists the same task met again, which counts for nothing', () => {
    const again = shown([one(1), one(2, { exposure: 'case 1' })], 0);
    expect(again?.responses).toBe(1);
    expect(again?.shown.map(({ earlier, counting }) => [earlier, Math.round(counting * 1000) / 1000])).toEqual([
      [1, 0],
      [0, 1],
    ]);
  });
});

test('an interval lies above the line, below it or across it', () => {
  expect(againstLine({ low: 0, high: 1 }, 0)).toBe('above');
  expect(againstLine({ low: -1, high: -0.1 }, 0)).toBe('below');
  expect(againstLine({ low: -1, high: 0 }, 0)).toBe('across');
});

test('states do not depend on the order in which the log is read', () => {
  const rows = [...six, one(3, { revision: 2, score: 1 }), one(4, { topic: 'fuel-quality' })];
  expect(statesOf([...rows].reverse(), 180)).toEqual(statesOf(rows, 180));
});

describe('the newest cases', () => {
  test('are told once each, the newest first, with the worst of their topics', () => {
    const cases = recentCasesOf([one(1), one(1, { topic: 'fuel-quality', safetyEvents: 1 }), one(2)]);
    expect(cases).toEqual([
      { work: 'attempt 2', at: at + 2, events: 0 },
      { work: 'attempt 1', at: at + 1, events: 1 },
    ]);
  });

  test('leave out a case met before, unless something dangerous was done in it', () => {
    const again = { exposure: 'case 1' };
    expect(recentCasesOf([one(1), one(2, again)])).toHaveLength(1);
    expect(recentCasesOf([one(1), one(2, { ...again, safetyEvents: 1 })])).toHaveLength(2);
  });

  test('know of a hands-on check only where it was dangerous, and never of questions', () => {
    expect(recentCasesOf([one(1, { source: 'observation' }), one(2, { source: 'question' })])).toEqual([]);
    expect(recentCasesOf([one(1, { source: 'observation', safetyEvents: 1 })])).toHaveLength(1);
  });
});
