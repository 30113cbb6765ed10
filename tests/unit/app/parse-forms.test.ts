import { expect, test } from 'vitest';
import { parseDecimal } from '@/app/_server/parse-decimal';
import { MOST_WORDS, parseCall, parseFinding, parseReading } from '@/app/learn/cases/[attemptId]/parse-forms';

const act = { attemptId: 'a', key: '0123456789abcdef' };

function form(fields: Record<string, string | readonly string[]>): FormData {
  const data = new FormData();
  for (const [name, values] of Object.entries(fields)) for (const value of [values].flat()) data.append(name, value);
  return data;
}

const finding = {
  ...act,
  reading: '3',
  quantity: 'prime-pressure',
  value: '6,5',
  unit: 'psi',
  verdict: 'fail',
  comparison: 'below',
  limit: 'prime-pressure-key-on',
  clears: ['returns'],
  suspects: ['priming', 'supply-side'],
  words: ' line one\r\nline two ',
};

test.each([
  ['6.5', 6.5],
  ['6,5', 6.5],
  [' 12 ', 12],
  ['-3', -3],
  ['0,125', 0.125],
  ['', null],
  ['1,150', 'value-ambiguous'],
  ['12,000', 'value-ambiguous'],
  ['1e3', 'value-not-a-number'],
  ['0x10', 'value-not-a-number'],
  ['1.2.3', 'value-not-a-number'],
  ['Infinity', 'value-not-a-number'],
  ['12345678901', 'value-not-a-number'],
])('“%s” is read as %s', (text, value) => {
  expect(parseDecimal(text)).toBe(value);
});

test('a complete finding comes through with its lists and with plain line ends', () => {
  expect(parseFinding(form(finding))).toEqual({
    ...act,
    finding: {
      kind: 'finding',
      reading: 3,
      quantity: 'prime-pressure',
      entered: { value: 6.5, unit: 'psi' },
      verdict: 'fail',
      comparison: 'below',
      limit: 'prime-pressure-key-on',
      clears: ['returns'],
      suspects: ['priming', 'supply-side'],
      words: 'line one\nline two',
    },
  });
});

test('the sheet may have no line, and a screen has no scale to read', () => {
  const parsed = parseFinding(form({ ...finding, limit: 'none', value: '', clears: [] }));
  expect(parsed).toMatchObject({ finding: { limit: null, entered: null, clears: [] } });
});

test('words are counted as people type them', () => {
  const words = 'x\r\n'.repeat(MOST_WORDS / 2);
  expect(parseFinding(form({ ...finding, words }))).toMatchObject({ finding: {} });
  expect(parseFinding(form({ ...finding, words: 'x'.repeat(MOST_WORDS + 1) }))).toEqual({
    error: 'words-too-long',
    values: { length: MOST_WORDS + 1, most: MOST_WORDS },
  });
});

test.each([
  ['nothing at all', undefined],
  ['a string', 'attemptId=a'],
  ['an object', { ...act, check: 'x', condition: 'idle', instrument: 'y' }],
  ['an empty form', new FormData()],
])('%s is no reading', (_, input) => {
  expect(parseReading(input)).toEqual({ missing: ['attemptId', 'key', 'check', 'condition', 'instrument'] });
});

test('each field that is not usable is named', () => {
  const bad = form({ ...finding, verdict: 'maybe', reading: '0', suspects: ['engine room'], unit: 'furlong' });
  expect(parseFinding(bad)).toEqual({ missing: ['reading', 'unit', 'verdict', 'suspects'] });
});

test('a file where words belong is refused', () => {
  const data = form({ ...act, check: 'x', condition: 'idle' });
  data.append('instrument', new File(['x'], 'x.txt'));
  expect(parseReading(data)).toEqual({ missing: ['instrument'] });
});

test('a call names its proving check and condition in one field', () => {
  expect(parseCall(form(call))).toMatchObject({ choice: { check: 'prime-pressure', condition: 'key-on' } });
  expect(parseCall(form({ ...call, proof: 'prime-pressure' }))).toEqual({ missing: ['proof'] });
});

const call = { ...act, cause: 'lift-pump-weak', repair: 'replace-lift-pump', proof: 'prime-pressure|key-on' };
const second = {
  alsoCause: 'main-filter-plugged',
  alsoRepair: 'replace-main-filter',
  alsoProof: 'main-filter-drop|idle',
};

test('a second cause comes through with its repair and its proof', () => {
  const also = {
    cause: 'main-filter-plugged',
    repair: 'replace-main-filter',
    check: 'main-filter-drop',
    condition: 'idle',
  };
  expect(parseCall(form({ ...call, ...second }))).toMatchObject({ choice: { cause: 'lift-pump-weak', also } });
});

test('steps of putting right come as a list, and none as an empty one', () => {
  expect(parseCall(form(call))).toMatchObject({ choice: { restored: [] } });
  const data = form(call);
  for (const step of ['take-gauge-off', 'prime']) data.append('restored', step);
  expect(parseCall(data)).toMatchObject({ choice: { restored: ['take-gauge-off', 'prime'] } });
  data.append('restored', '');
  expect(parseCall(data)).toEqual({ missing: ['restored'] });
});

test('a second cause left empty is none', () => {
  const parsed = parseCall(form({ ...call, alsoCause: '', alsoRepair: '', alsoProof: '' }));
  expect(parsed).toHaveProperty('choice');
  expect(parsed).not.toHaveProperty('choice.also');
});

test('a second cause that was begun says what it lacks', () => {
  expect(parseCall(form({ ...call, alsoCause: 'main-filter-plugged' }))).toEqual({
    lacking: ['alsoRepair', 'alsoProof'],
  });
  expect(parseCall(form({ ...call, ...second, alsoCause: '' }))).toEqual({ lacking: ['alsoCause'] });
  expect(parseCall(form({ ...call, ...second, alsoProof: 'somehow' }))).toEqual({ missing: ['alsoProof'] });
});
