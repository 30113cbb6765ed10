import { expect, test } from 'vitest';
import { lengthInWords } from '@/app/_ui/time-left/length-in-words';

const MINUTE = 60_000;

test.each([
  [0, '0 minutes'],
  [MINUTE, '1 minute'],
  [2 * MINUTE - 1, '1 minute'],
  [59 * MINUTE, '59 minutes'],
  [60 * MINUTE, '1 hour'],
  [80 * MINUTE, '1 hour 20 minutes'],
  [24 * 60 * MINUTE, '1 day'],
  [(3 * 24 + 4) * 60 * MINUTE + 5 * MINUTE, '3 days 4 hours'],
])('%i ms are said as %s', (milliseconds, words) => {
  expect(lengthInWords(milliseconds, 'en')).toBe(words);
});
