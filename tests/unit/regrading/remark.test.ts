import { describe, expect, test } from 'vitest';
import type { Grade, Part } from '@/lib/grading/grade';
import { movesOf } from '@/lib/regrading/moves';
import { isWithdrawn, reweighed, weightsAfter, withGiven } from '@/lib/regrading/remark-case';
import { remarked } from '@/lib/regrading/remark-question';
import { aBody } from '../../support/sitting-rows';

const standard = { verdicts: 25, reasons: 25, call: 25, route: 15, practice: 10 };
const earned = { verdicts: 25, reasons: 10, call: 0, route: 7.5, practice: 10 };
const partsOf = (weights: Record<Part, number>, points: Record<Part, number>) =>
  (Object.keys(weights) as Part[]).map((part) => ({ part, points: points[part], outOf: weights[part] }));
const aGrade = (dangerous = false): Pick<Grade, 'parts' | 'total' | 'safetyEvents'> => ({
  parts: partsOf(standard, earned),
  total: 53,
  safetyEvents: dangerous ? [{ seq: 1, code: 'high-pressure-jet' }] : [],
});

describe('a grade by other weights', () => {
  test('by its own weights is what it was', () => {
    expect(reweighed(aGrade(), standard, 30)).toEqual({ parts: aGrade().parts, total: 53 });
  });

  test('earns the same share of each part', () => {
    const onlyReasons = { verdicts: 0, reasons: 100, call: 0, route: 0, practice: 0 };
    expect(reweighed(aGrade(), onlyReasons, 30).total).toBe(40);
    const halfRoute = { verdicts: 50, reasons: 0, call: 0, route: 50, practice: 0 };
    expect(reweighed(aGrade(), halfRoute, 30).total).toBe(75);
  });

  test('stays below the cap once something dangerous was done', () => {
    const onlyVerdicts = { verdicts: 100, reasons: 0, call: 0, route: 0, practice: 0 };
    expect(reweighed(aGrade(true), onlyVerdicts, 30).total).toBe(30);
  });
});

describe('points that a person gave', () => {
  test('stand for those of their part, and no part earns more than it weighs', () => {
    const computed = reweighed(aGrade(), standard, 30);
    expect(withGiven(computed, { call: 20 }).total).toBe(73);
    expect(withGiven(computed, { call: 80 }).parts.find(({ part }) => part === 'call')?.points).toBe(25);
    expect(withGiven(computed, {})).toEqual(computed);
  });

  test('lift a total that was held down, since a person decided it', () => {
    const held = reweighed(aGrade(true), standard, 30);
    expect(held.total).toBe(30);
    expect(withGiven(held, { call: 25 }).total).toBe(78);
  });
});

test('the last weights count, and a task that was withdrawn stays so', () => {
  const other = { ...standard, verdicts: 10, reasons: 40 };
  const changes = [
    { kind: 'weights', weights: standard },
    { kind: 'withdraw', place: 2 },
    { kind: 'weights', weights: other },
  ] as const;
  expect(weightsAfter(changes)).toBe(other);
  expect([1, 2, 3].map((place) => isWithdrawn(changes, place))).toEqual([false, true, false]);
  expect(weightsAfter([])).toBeUndefined();
});

describe('a further right answer', () => {
  const change = { kind: 'key', place: 3, right: ['b'] } as const;
  const answered = (option: string) => ({ asked: aBody, answer: { form: 'choice' as const, option }, credit: 0 });

  test('earns what the first does, at its own place alone', () => {
    expect(remarked(answered('b'), [change], 3)).toBe(1);
    expect(remarked(answered('b'), [change], 2)).toBe(0);
    expect(remarked({ ...answered('a'), credit: 1 }, [change], 3)).toBe(1);
  });

  test('gives nothing to whoever did not answer, and nothing to free text', () => {
    expect(remarked({ asked: aBody, answer: null, credit: 0 }, [change], 3)).toBe(0);
    const words = { ...aBody, key: { form: 'words', model: 'So', guidance: '' } } as const;
    expect(remarked({ asked: words, answer: { form: 'words', text: 'So' }, credit: null }, [change], 3)).toBeNull();
  });
});

test('who moves stands the furthest first, with the means of everybody', () => {
  const aMove = (learnerId: string, before: number, after: number) => ({ learnerId, turnId: learnerId, before, after });
  const moves = movesOf([aMove('a', 50, 50), aMove('b', 40, 45), aMove('c', 90, 70)]);
  expect(moves.moved.map(({ learnerId }) => learnerId)).toEqual(['c', 'b']);
  expect(moves).toMatchObject({ unmoved: 1, meanBefore: 60, meanAfter: 55 });
  expect(() => movesOf([])).toThrow(RangeError);
});
