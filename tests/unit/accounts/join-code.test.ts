import { describe, expect, test } from 'vitest';
import { formatJoinCode, JOIN_CODE_LENGTH, joinCodeFrom, parseJoinCode } from '@/lib/accounts/join-code';

/** The 32 signs of Crockford's Base 32, crockford.com/base32.html (from memory): without I, L, O and U. */
const CROCKFORD = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

describe('a join code', () => {
  test('is made of signs that are not taken for one another, every one of them as likely', () => {
    const counts = new Map<string, number>();
    for (let start = 0; start < 256; start += JOIN_CODE_LENGTH) {
      const bytes = Uint8Array.from({ length: JOIN_CODE_LENGTH }, (_, i) => start + i);
      for (const sign of joinCodeFrom(bytes)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
    }
    expect([...counts.keys()].sort().join('')).toBe(CROCKFORD);
    expect(new Set(counts.values())).toEqual(new Set([256 / 32]));
  });

  test('needs enough random bytes', () => {
    expect(() => joinCodeFrom(new Uint8Array(JOIN_CODE_LENGTH - 1))).toThrow(RangeError);
  });

  test('is read back as it was written down', () => {
    const code = joinCodeFrom(Uint8Array.from([1, 22, 133, 44, 255, 66, 7, 188]));
    expect(parseJoinCode(formatJoinCode(code))).toBe(code);
  });

  test.each([
    ['4ktp-9xwm', '4KTP9XWM'],
    [' 4KTP 9XWM ', '4KTP9XWM'],
    ['okIl-9xwm', '0K119XWM'],
  ])('is forgiven %j', (typed, code) => {
    expect(parseJoinCode(typed)).toBe(code);
  });

  test.each(['', '4KTP-9XW', '4KTP-9XWMM', '4KTP-9XWU', '4KTP_9XWM', "4KTP'9XW"])('is not %j', (typed) => {
    expect(parseJoinCode(typed)).toBeUndefined();
  });
});
