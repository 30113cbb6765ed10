import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PIN_LENGTH } from '@/lib/accounts/secret-rules';
import { waitingSeconds } from '@/lib/accounts/waiting-time';

const QUARTER_OF_AN_HOUR = 15 * 60;

describe('after tries that were refused, one waits', () => {
  test.each([
    [0, 0],
    [4, 0],
    [5, 30],
    [6, 60],
    [7, 120],
    [9, 480],
    [10, QUARTER_OF_AN_HOUR],
    [10_000, QUARTER_OF_AN_HOUR],
  ])('%d of them: %d s', (refused, seconds) => {
    expect(waitingSeconds(refused)).toBe(seconds);
  });

  test('never less after more of them, and a quarter of an hour at most', () => {
    fc.assert(
      fc.property(fc.nat({ max: 5000 }), fc.nat({ max: 5000 }), (fewer, more) => {
        const [before, after] = [waitingSeconds(fewer), waitingSeconds(fewer + more)];
        expect(before).toBeGreaterThanOrEqual(0);
        expect(after).toBeGreaterThanOrEqual(before);
        expect(after).toBeLessThanOrEqual(QUARTER_OF_AN_HOUR);
      }),
    );
  });

  test('so that whoever guesses all day tries less than one in five thousand of the PINs there are', () => {
    let [guesses, seconds] = [0, 0];
    while (seconds < 24 * 3600) seconds += waitingSeconds(++guesses);
    expect(guesses / 10 ** PIN_LENGTH).toBeLessThan(1 / 5000);
  });
});
