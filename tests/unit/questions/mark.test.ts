import { expect, test } from 'vitest';
import type { Answer, AnswerForm, Key } from '@/lib/questions/answer';
import type { Line } from '@/lib/questions/line';
import { markAnswer } from '@/lib/questions/mark';

const line = (say: string): Line => ({ say });
const options = (ids: string) => [...ids].map((id) => ({ id, line: line(id) }));

function mark(answer: AnswerForm, key: Key, given: Answer, steps = 1) {
  return markAnswer({ answer, key, steps }, given);
}

test('any option that is right earns everything, any other nothing and its reason', () => {
  const form: AnswerForm = { form: 'choice', options: options('abc') };
  const key: Key = { form: 'choice', right: ['a', 'c'], because: { b: line('why-not-b') } };
  expect(mark(form, key, { form: 'choice', option: 'c' })).toEqual({ credit: 1, score: 1, notes: [] });
  expect(mark(form, key, { form: 'choice', option: 'b' })).toEqual({ credit: 0, score: 0, notes: [line('why-not-b')] });
});

test.each<[string, string, number]>([
  ['all and only the right ones', 'ab', 1],
  ['one of the two', 'a', 0.5],
  ['one right and one wrong', 'ac', 0],
  ['both and one wrong', 'abc', 0.5],
  ['everything', 'abcd', 0],
  ['nothing', '', 0],
])('of several, %s earns its share', (_, chosen, credit) => {
  const form: AnswerForm = { form: 'several', options: options('abcd') };
  const given: Answer = { form: 'several', options: [...chosen] };
  expect(mark(form, { form: 'several', right: ['a', 'b'] }, given, 2)).toMatchObject({ credit, score: credit * 2 });
});

test('where none of several is right, choosing none is', () => {
  const form: AnswerForm = { form: 'several', options: options('ab') };
  const key: Key = { form: 'several', right: [] };
  expect(mark(form, key, { form: 'several', options: [] }).credit).toBe(1);
  expect(mark(form, key, { form: 'several', options: ['a'] }).credit).toBe(0);
});

test('an order earns the share of pairs that stand right, in whole steps', () => {
  const form: AnswerForm = { form: 'order', items: options('abcd') };
  const given = (order: string): Answer => ({ form: 'order', order: [...order] });
  const key: Key = { form: 'order', order: ['a', 'b', 'c', 'd'] };
  expect(mark(form, key, given('abcd'), 4)).toMatchObject({ credit: 1, score: 4 });
  // One pair of six the other way round.
  expect(mark(form, key, given('abdc'), 4)).toMatchObject({ credit: 5 / 6, score: 3 });
  expect(mark(form, key, given('dcba'), 4)).toMatchObject({ credit: 0, score: 0 });
});

test('a grid earns its share of rows', () => {
  const form: AnswerForm = { form: 'grid', rows: options('pqr'), columns: options('xy') };
  const key: Key = { form: 'grid', cells: { p: 'x', q: 'y', r: 'x' } };
  expect(mark(form, key, { form: 'grid', cells: { p: 'x', q: 'y', r: 'y' } }, 3)).toMatchObject({ score: 2 });
});

const pressures: AnswerForm = {
  form: 'numbers',
  parts: [
    { id: 'drop', line: line('drop'), units: ['psi', 'kPa'] },
    { id: 'share', line: line('share'), units: ['%'] },
  ],
};
const pressureKey: Key = {
  form: 'numbers',
  parts: {
    drop: { value: 20, tolerance: 0.5, slips: [{ value: 120, line: line('added-them') }] },
    share: { value: 40, tolerance: 1, slips: [], follows: { part: 'drop', value: (drop) => 2 * drop } },
  },
};

function numbers(drop: number, share: number, unit: 'psi' | 'kPa' = 'psi') {
  return mark(
    pressures,
    pressureKey,
    { form: 'numbers', parts: { drop: { value: drop, unit }, share: { value: share, unit: '%' } } },
    4,
  );
}

test('a number counts to the end of its tolerance and no further', () => {
  expect(numbers(20.5, 40).parts).toEqual({ drop: 'right', share: 'right' });
  expect(numbers(20.51, 40).parts).toEqual({ drop: 'wrong', share: 'right' });
});

test('a number counts in any unit that it may be given in', () => {
  // 20 psi, by 6.894757 kPa to the psi. @source NIST SP 811 (2008), appendix B.8
  expect(numbers(137.9, 40, 'kPa').parts?.drop).toBe('right');
  expect(numbers(20, 40, 'kPa').parts?.drop).toBe('wrong');
});

test('a wrong number says how it came about, where one can tell', () => {
  expect(numbers(120, 40).notes).toEqual([line('added-them')]);
  expect(numbers(77, 40).notes).toEqual([]);
});

test('what follows from an earlier wrong number earns most of its share', () => {
  expect(numbers(120, 240)).toMatchObject({ credit: 0.375, score: 1, parts: { drop: 'wrong', share: 'follows' } });
  expect(numbers(120, 250)).toMatchObject({ credit: 0, parts: { drop: 'wrong', share: 'wrong' } });
});

test('free text waits for a person', () => {
  const key: Key = { form: 'words', model: 'because', guidance: '' };
  expect(mark({ form: 'words', most: 100 }, key, { form: 'words', text: 'since' })).toEqual({
    credit: null,
    score: null,
    notes: [],
  });
});

test('an answer of another form is not marked', () => {
  const form: AnswerForm = { form: 'choice', options: options('ab') };
  expect(() => mark(form, { form: 'choice', right: ['a'] }, { form: 'words', text: 'a' })).toThrow(/form words/);
});
