import { expect, test } from 'vitest';
import { type Answer, type AnswerForm, answerSchema, fitsForm } from '@/lib/questions/answer';
import type { Line } from '@/lib/questions/line';

const line: Line = { say: 'it' };
const items = (ids: string) => [...ids].map((id) => ({ id, line }));

const choice: AnswerForm = { form: 'choice', options: items('ab') };
const several: AnswerForm = { form: 'several', options: items('ab') };
const order: AnswerForm = { form: 'order', items: items('abc') };
const grid: AnswerForm = { form: 'grid', rows: items('pq'), columns: items('xy') };
const number: AnswerForm = { form: 'numbers', parts: [{ id: 'a', line, units: ['psi', 'kPa'] }] };
const bare: AnswerForm = { form: 'numbers', parts: [{ id: 'a', line, units: [] }] };
const words: AnswerForm = { form: 'words', most: 5 };

test.each<[string, AnswerForm, Answer]>([
  ['an option', choice, { form: 'choice', option: 'b' }],
  ['no option of several', several, { form: 'several', options: [] }],
  ['every item, in any order', order, { form: 'order', order: ['c', 'a', 'b'] }],
  ['a column for each row', grid, { form: 'grid', cells: { p: 'x', q: 'x' } }],
  ['a number in one of its units', number, { form: 'numbers', parts: { a: { value: 1, unit: 'kPa' } } }],
  ['a bare number', bare, { form: 'numbers', parts: { a: { value: -1 } } }],
  ['words', words, { form: 'words', text: 'since' }],
])('%s fits', (_, form, answer) => {
  expect(fitsForm(form, answer)).toBe(true);
});

test.each<[string, AnswerForm, Answer]>([
  ['an option that is not there', choice, { form: 'choice', option: 'z' }],
  ['an answer of another form', choice, { form: 'several', options: ['a'] }],
  ['an option twice', several, { form: 'several', options: ['a', 'a'] }],
  ['an item left out', order, { form: 'order', order: ['c', 'a'] }],
  ['an item twice', order, { form: 'order', order: ['a', 'a', 'b'] }],
  ['a row left open', grid, { form: 'grid', cells: { p: 'x' } }],
  ['a row that is not there', grid, { form: 'grid', cells: { p: 'x', z: 'x' } }],
  ['a column that is not there', grid, { form: 'grid', cells: { p: 'x', q: 'z' } }],
  ['a number without its unit', number, { form: 'numbers', parts: { a: { value: 1 } } }],
  ['a number in a unit that it has not', number, { form: 'numbers', parts: { a: { value: 1, unit: 's' } } }],
  ['a unit where there is none', bare, { form: 'numbers', parts: { a: { value: 1, unit: 's' } } }],
  ['a number for nothing', number, { form: 'numbers', parts: { z: { value: 1, unit: 'kPa' } } }],
  ['blank words', words, { form: 'words', text: '   ' }],
  ['more words than asked for', words, { form: 'words', text: 'because' }],
])('%s does not fit', (_, form, answer) => {
  expect(fitsForm(form, answer)).toBe(false);
});

test.each<[string, unknown]>([
  ['a number that is none', { form: 'numbers', parts: { a: { value: Number.NaN } } }],
  ['an endless number', { form: 'numbers', parts: { a: { value: Number.POSITIVE_INFINITY } } }],
  ['an unknown unit', { form: 'numbers', parts: { a: { value: 1, unit: 'furlong' } } }],
  ['a field too many', { form: 'choice', option: 'a', right: ['a'] }],
  ['text beyond all measure', { form: 'words', text: 'x'.repeat(10_000) }],
  ['no form', { option: 'a' }],
])('%s is no answer', (_, answer) => {
  expect(answerSchema.safeParse(answer).success).toBe(false);
});
