import { expect, test } from 'vitest';
import { parseAnswer } from '@/app/_server/questions/parse-answer';
import messages from '@/content/messages/en.json';
import type { Answer, AnswerForm } from '@/lib/questions/answer';

type Fields = Record<string, string | readonly string[]>;

function form(fields: Fields): FormData {
  const data = new FormData();
  for (const [name, values] of Object.entries(fields)) for (const value of [values].flat()) data.append(name, value);
  return data;
}

function items(...ids: string[]) {
  return ids.map((id) => ({ id, line: { markdown: id } }));
}

const choice: AnswerForm = { form: 'choice', options: items('a', 'b', 'c') };
const several: AnswerForm = { form: 'several', options: items('a', 'b', 'c') };
const order: AnswerForm = { form: 'order', items: items('a', 'b', 'c') };
const numbers: AnswerForm = {
  form: 'numbers',
  parts: [
    { id: 'drop', line: { markdown: 'Drop' }, units: ['kPa', 'bar'] },
    { id: 'share', line: { markdown: 'Share' }, units: ['%'] },
    { id: 'count', line: { markdown: 'Count' }, units: [] },
  ],
};
const point: AnswerForm = {
  form: 'point',
  rig: 'tern-13',
  targets: [{ id: 't1', what: 'element', of: 'main-filter', line: { markdown: 'a diamond' } }],
};
const grid: AnswerForm = { form: 'grid', rows: items('r1', 'r2'), columns: items('up', 'down') };
const stretch: AnswerForm = { form: 'stretch', stretches: [{ id: 's1', from: 0, to: 1 }] };
const spot: AnswerForm = {
  form: 'spot',
  picture: '0123456789abcdef0123',
  width: 100,
  height: 100,
  alt: 'A filter head',
  shapes: [{ id: 'x', line: { markdown: 'a screw' }, left: 0, top: 0, right: 0.5, bottom: 0.5 }],
};
const words: AnswerForm = { form: 'words', most: 50 };

const filled = {
  'value.drop': '34,5',
  'unit.drop': 'bar',
  'value.share': ' -3 ',
  'unit.share': '%',
  'value.count': '2',
};

test.each<[AnswerForm, Fields, Answer]>([
  [choice, { option: 'b' }, { form: 'choice', option: 'b' }],
  [several, { options: ['c', 'a'] }, { form: 'several', options: ['c', 'a'] }],
  [order, { order: ['c', 'a', 'b'] }, { form: 'order', order: ['c', 'a', 'b'] }],
  [
    numbers,
    filled,
    {
      form: 'numbers',
      parts: { drop: { value: 34.5, unit: 'bar' }, share: { value: -3, unit: '%' }, count: { value: 2 } },
    },
  ],
  [point, { target: 't1' }, { form: 'point', target: 't1' }],
  [grid, { 'cell.r1': 'up', 'cell.r2': 'up' }, { form: 'grid', cells: { r1: 'up', r2: 'up' } }],
  [stretch, { stretch: 's1' }, { form: 'stretch', stretch: 's1' }],
  [spot, { shape: 'x' }, { form: 'spot', shape: 'x' }],
  [words, { text: ' one\r\ntwo ' }, { form: 'words', text: 'one\ntwo' }],
])('$form fields give the answer that they hold', (answerForm, fields, answer) => {
  expect(parseAnswer(form({ ...fields, key: '0123456789abcdef', action: 'x' }), answerForm)).toEqual({ answer });
});

test.each([choice, several, order, point, stretch, spot, words])(
  '$form with nothing chosen is missing',
  (answerForm) => {
    expect(parseAnswer(form({}), answerForm)).toEqual({ problem: 'answer-missing' });
  },
);

test.each<[string, AnswerForm, Fields]>([
  ['an option that is not there', choice, { option: 'z' }],
  ['an option called like a part of every object', choice, { option: '__proto__' }],
  ['an option twice', several, { options: ['a', 'a'] }],
  ['one of them not there', several, { options: ['a', 'z'] }],
  ['more than there are', several, { options: Array.from({ length: 5000 }, () => 'a') }],
  ['an item left out', order, { order: ['a', 'b'] }],
  ['an item twice', order, { order: ['a', 'b', 'b'] }],
  ['an item that is not there', order, { order: ['a', 'b', 'z'] }],
  ['a target that is not there', point, { target: 'main-filter' }],
  ['a column that is not there', grid, { 'cell.r1': 'up', 'cell.r2': 'constructor' }],
  ['a stretch that is not there', stretch, { stretch: 's2' }],
  ['an area that is not there', spot, { shape: 'y' }],
])('%s was not offered', (_, answerForm, fields) => {
  expect(parseAnswer(form(fields), answerForm)).toEqual({ problem: 'answer-not-offered' });
});

test('a row that is open is named, and rows that are not asked for count for nothing', () => {
  expect(parseAnswer(form({ 'cell.r1': 'up', 'cell.r3': 'up' }), grid)).toEqual({ problem: 'answer-open', at: 'r2' });
});

test.each<[string, Fields, object]>([
  ['left open', { 'value.share': ' ' }, { problem: 'answer-open', at: 'share' }],
  ['no number', { 'value.drop': 'about 3' }, { problem: 'answer-not-a-number', at: 'drop', value: 'about 3' }],
  ['infinite', { 'value.drop': 'Infinity' }, { problem: 'answer-not-a-number', at: 'drop', value: 'Infinity' }],
  [
    'in a computer’s notation',
    { 'value.drop': '1e999' },
    { problem: 'answer-not-a-number', at: 'drop', value: '1e999' },
  ],
  [
    'a thousand or a fraction',
    { 'value.count': '1,150' },
    { problem: 'answer-ambiguous', at: 'count', value: '1,150' },
  ],
  ['in a unit that is not offered', { 'unit.drop': 'psi' }, { problem: 'answer-unit', at: 'drop' }],
  ['in no unit, where there are several', { 'unit.drop': '' }, { problem: 'answer-unit', at: 'drop' }],
  ['in a unit that there is not', { 'unit.share': 'furlong' }, { problem: 'answer-unit', at: 'share' }],
])('a number that is %s is refused, and the part is named', (_, fields, problem) => {
  expect(parseAnswer(form({ ...filled, ...fields }), numbers)).toEqual(problem);
});

test('the only unit of a part need not be sent', () => {
  const { 'unit.share': _, ...rest } = filled;
  expect(parseAnswer(form(rest), numbers)).toMatchObject({ answer: { parts: { share: { unit: '%' } } } });
});

test('free text ends at its room', () => {
  expect(parseAnswer(form({ text: 'x'.repeat(50) }), words)).toHaveProperty('answer');
  expect(parseAnswer(form({ text: 'x'.repeat(51) }), words)).toEqual({ problem: 'answer-too-long' });
  expect(parseAnswer(form({ text: ' \n ' }), words)).toEqual({ problem: 'answer-missing' });
});

test('a file where words belong is nothing', () => {
  const data = new FormData();
  data.append('option', new File(['a'], 'a'));
  expect(parseAnswer(data, choice)).toEqual({ problem: 'answer-missing' });
  const list = new FormData();
  list.append('options', new File(['a'], 'a'));
  expect(parseAnswer(list, several)).toEqual({ problem: 'answer-not-offered' });
});

test('every problem has its sentence', () => {
  const codes = ['missing', 'open', 'not-a-number', 'ambiguous', 'unit', 'too-long', 'not-offered'];
  for (const code of codes) expect(messages.problems).toHaveProperty(`answer-${code}`);
});
