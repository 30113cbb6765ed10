import { expect, test } from 'vitest';
import { compare, verdictOf } from '@/lib/checks/verdict';

const limits = { min: 100, max: 200 };
/** A guard band of 1.645 × 10 = 16.45 on either side of each limit. */
const UNCERTAINTY = 10;

test.each([
  [83, 'below'],
  [84, 'too-close'],
  [100, 'too-close'],
  [116, 'too-close'],
  [117, 'within'],
  [183, 'within'],
  [184, 'too-close'],
  [216, 'too-close'],
  [217, 'above'],
] as const)('a reading of %d between 100 and 200 with u = 10 is %s', (reading, expected) => {
  expect(compare(reading, limits, UNCERTAINTY)).toBe(expected);
});

test('without uncertainty only the limits count, and the limit itself is good', () => {
  expect(compare(100, limits, 0)).toBe('within');
  expect(compare(200, limits, 0)).toBe('within');
  expect(compare(99.999, limits, 0)).toBe('below');
  expect(compare(200.001, limits, 0)).toBe('above');
});

test('a side without a limit is never crossed', () => {
  expect(compare(1e9, { min: 100 }, UNCERTAINTY)).toBe('within');
  expect(compare(-1e9, { max: 200 }, UNCERTAINTY)).toBe('within');
});

test('an instrument too coarse for the band can only say that it is too close', () => {
  expect(compare(150, limits, 40)).toBe('too-close');
});

test('each comparison has its verdict', () => {
  expect(verdictOf('within')).toBe('pass');
  expect(verdictOf('below')).toBe('fail');
  expect(verdictOf('above')).toBe('fail');
  expect(verdictOf('too-close')).toBe('cannot-tell');
});
