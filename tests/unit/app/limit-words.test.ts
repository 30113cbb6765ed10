import { createTranslator } from 'next-intl';
import { expect, test } from 'vitest';
import type { ReadingItem } from '@/app/_server/attempt-view';
import { limitWords, limitWordsIn } from '@/app/_ui/limit-words';
import { printedValue } from '@/app/_ui/printed-value';
import { readingText } from '@/app/_ui/reading-text';
import messages from '@/content/messages/en.json';
import type { LimitLine } from '@/lib/rig/rig';
import { aGauge } from '../../support/gauge';

const say = createTranslator({ locale: 'en', messages, namespace: 'limits' });
const line: LimitLine = {
  id: 'a-line',
  check: 'a-check',
  condition: 'idle',
  quantity: 'a-quantity',
  unit: 'kPa',
  source: { kind: 'assumed', because: 'A line for tests' },
};
const grades = ['dry', 'damp', 'dripping', 'spraying'];
const words = (changes: Partial<LimitLine>, facts = { vacuum: false, grades: undefined as string[] | undefined }) =>
  limitWords(say, { ...line, ...changes }, 'psi-f', facts);

test('a limit is said in the reader’s units', () => {
  expect(words({ min: 70 })).toBe('at least 10.2\u00a0psi');
  expect(words({ max: 27 }, { vacuum: true, grades: undefined })).toBe('at most 7.97\u00a0inHg');
  expect(words({ min: 15, max: 60, unit: '°C' })).toBe('59 to 140\u00a0°F');
  expect(words({ max: 2, unit: 'Ω' })).toBe('at most 2\u00a0Ω');
});

test('a limit beside a reading is said in the unit that the instrument prints', () => {
  const facts = { vacuum: false, grades: undefined };
  expect(limitWordsIn(say, { ...line, min: 70 }, 'psi', facts)).toBe('at least 10.2\u00a0psi');
  expect(limitWordsIn(say, { ...line, max: 1.4, unit: 'MPa' }, 'kPa', facts)).toBe('at most 1,400\u00a0kPa');
});

test('what is judged by eye has a worst word in place of a number', () => {
  const facts = { vacuum: false, grades };
  expect(words({ max: 1, unit: 'grade' }, facts)).toBe('no worse than “damp”');
  expect(words({ max: 0.5, unit: 'grade' }, facts)).toBe('no worse than “dry”');
  expect(words({ max: 9, unit: 'grade' }, facts)).toBe('no worse than “9”');
});

test('a thermometer is set to the reader’s scale; other screens print in their own unit', () => {
  expect(printedValue(40, '°C', 0.1, 'psi-f')).toEqual({ digits: '104.0', unit: '°F' });
  expect(printedValue(40, '°C', 0.1, 'kpa-c')).toEqual({ digits: '40.0', unit: '°C' });
  expect(printedValue(1250, 'kPa', 5, 'psi-f')).toEqual({ digits: '1,250', unit: 'kPa' });
  expect(printedValue(12.4, 'V', 0.1, 'psi-f')).toEqual({ digits: '12.4', unit: 'V' });
});

test('what an eye sees stands in words, what a scale shows is not given away', () => {
  const item = (changes: Partial<ReadingItem>): ReadingItem => ({
    quantity: 'a-quantity',
    label: 'A quantity',
    shown: { kind: 'value', quantity: 'a-quantity', value: 2, unit: 'grade' },
    vacuum: false,
    grades,
    gauge: aGauge({ display: 'eye', unit: 'grade', resolution: 1 }),
    finding: undefined,
    ...changes,
  });
  const density = { kind: 'value', quantity: 'a-quantity', value: 832, unit: 'kg/m³' } as const;
  expect(readingText(item({}), 'kpa-c')).toBe('dripping');
  expect(readingText(item({ grades: undefined, shown: density }), 'kpa-c')).toBe('832\u00a0kg/m³');
  expect(readingText(item({ gauge: aGauge() }), 'kpa-c')).toBeUndefined();
  expect(readingText(item({ gauge: aGauge({ display: 'trace' }) }), 'kpa-c')).toBeUndefined();
});
