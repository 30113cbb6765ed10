import { describe, expect, test } from 'vitest';
import type { Part } from '@/lib/grading/grade';
import { type EffectiveCase, effectiveCase, effectiveQuestion, type Given } from '@/lib/reviewing/effective';
import { aBody } from '../../support/sitting-rows';

const weights = { verdicts: 25, reasons: 25, call: 25, route: 15, practice: 10 };
const earned = { verdicts: 25, reasons: 10, call: 0, route: 7.5, practice: 10 };
const grade = (dangerous = false) => ({
  parts: (Object.keys(weights) as Part[]).map((part) => ({ part, points: earned[part], outOf: weights[part] })),
  total: dangerous ? 30 : 53,
  safetyEvents: dangerous ? [{ seq: 1, code: 'high-pressure-jet' as const }] : [],
});
const given = (part: Part, points: number | null): Given => ({ part, points });
const of = (effective: EffectiveCase, part: Part) => effective.parts.find((one) => one.part === part);

describe('a case', () => {
  test('counts what was computed where nobody changed anything', () => {
    const effective = effectiveCase(grade(), [], 30, []);
    expect(effective).toMatchObject({ computed: 53, regraded: 53, total: 53 });
    expect(effective.parts.map(({ points }) => points)).toEqual([25, 10, 0, 7.5, 10]);
  });

  test('keeps what was computed beside what a person gave', () => {
    const effective = effectiveCase(grade(), [], 30, [given('call', 20)]);
    expect(effective).toMatchObject({ computed: 53, regraded: 53, total: 73 });
    expect(of(effective, 'call')).toEqual({
      part: 'call',
      computed: { points: 0, outOf: 25 },
      regraded: { points: 0, outOf: 25 },
      given: 20,
      points: 20,
    });
  });

  test('counts the last that was given for a part, and none that was taken back', () => {
    expect(effectiveCase(grade(), [], 30, [given('call', 20), given('call', 5)]).total).toBe(58);
    const back = effectiveCase(grade(), [], 30, [given('call', 20), given('route', 15), given('call', null)]);
    expect(back.total).toBe(60);
    expect(of(back, 'call')).toMatchObject({ given: undefined, points: 0 });
  });

  test('is regraded first and overridden after', () => {
    const onlyReasons = { verdicts: 0, reasons: 100, call: 0, route: 0, practice: 0 };
    const changes = [{ kind: 'weights' as const, weights: onlyReasons }];
    const effective = effectiveCase(grade(), changes, 30, [given('reasons', 70)]);
    expect(effective).toMatchObject({ computed: 53, regraded: 40, total: 70 });
    expect(of(effective, 'reasons')).toMatchObject({
      computed: { points: 10, outOf: 25 },
      regraded: { points: 40, outOf: 100 },
    });
  });

  test('is held down by something dangerous until a person decides otherwise', () => {
    expect(effectiveCase(grade(true), [], 30, []).total).toBe(30);
    expect(effectiveCase(grade(true), [], 30, [given('route', 7.5)]).total).toBe(53);
  });
});

describe('a question', () => {
  const wrong = { asked: aBody, answer: { form: 'choice', option: 'b' } as const, credit: 0, manual: undefined };

  test('counts its key, then what the key became, then what a person gave', () => {
    const key = [{ kind: 'key' as const, place: 3, right: ['b'] }];
    expect(effectiveQuestion(wrong, [], 3, [])).toMatchObject({ computed: 0, regraded: 0, points: 0 });
    expect(effectiveQuestion(wrong, key, 3, [])).toMatchObject({ computed: 0, regraded: 1, points: 1 });
    expect(effectiveQuestion(wrong, key, undefined, [])).toMatchObject({ regraded: 0, points: 0 });
    const half = [{ part: null, points: 0.5 }];
    expect(effectiveQuestion(wrong, key, 3, half)).toEqual({
      outOf: 1,
      computed: 0,
      regraded: 1,
      given: 0.5,
      points: 0.5,
    });
    expect(effectiveQuestion(wrong, [], 3, [...half, { part: null, points: null }]).points).toBe(0);
  });

  test('of free text waits for a person, and never earns more than it has steps', () => {
    const text = { asked: { ...aBody, steps: 3 }, answer: { form: 'words', text: 'Air.' } as const, credit: null };
    expect(effectiveQuestion({ ...text, manual: undefined }, [], 1, []).points).toBeNull();
    expect(effectiveQuestion({ ...text, manual: 2 }, [], 1, [])).toMatchObject({ computed: 2, points: 2 });
    expect(effectiveQuestion({ ...text, manual: 2 }, [], 1, [{ part: null, points: 9 }]).points).toBe(3);
  });
});
