import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  MAX_PASSWORD,
  MIN_PASSWORD,
  PIN_LENGTH,
  passwordFault,
  pinFault,
  secretFault,
} from '@/lib/accounts/secret-rules';

describe('a password', () => {
  // NIST SP 800-63B, section 5.1.1.2 (from memory): at least 8 signs are to be asked for, and at least 64 to be taken.
  test('is asked to be no shorter than is published as the least, and may be as long as is published', () => {
    expect(MIN_PASSWORD).toBeGreaterThanOrEqual(8);
    expect(MAX_PASSWORD).toBeGreaterThanOrEqual(64);
  });

  test.each([
    ['a'.repeat(9), 'password-short'],
    ['', 'password-short'],
    ['ab cd ef g', undefined],
    ['x'.repeat(128), undefined],
    ['x'.repeat(129), 'password-long'],
  ])('%j is judged by its length', (password, fault) => {
    expect(passwordFault(password, [])).toBe(fault);
  });

  test('is not a name of whoever chooses it, in capitals or not', () => {
    const names = ['Kit Larsen-Moe', 'kit@harrow-bay'];
    expect(passwordFault('kit larsen-moe', names)).toBe('password-is-name');
    expect(passwordFault('KIT@HARROW-BAY', names)).toBe('password-is-name');
    expect(passwordFault('kit@harrow-bay!', names)).toBeUndefined();
  });

  // The same section: no rules of composition.
  test('may be of any signs, also of one kind alone', () => {
    const lengths = { minLength: MIN_PASSWORD, maxLength: 64 };
    fc.assert(
      fc.property(fc.string({ ...lengths, unit: fc.constantFrom(...'abcdefgh 0123é雨!') }), (password) => {
        expect(passwordFault(password, [])).toBeUndefined();
      }),
    );
  });
});

describe('a PIN', () => {
  test.each(['', '48261', '4826139', '48 261', '48261x', '٤٨٢٦١٣', '482613\n', '-48261', '4826.1'])(
    'is six digits, so not %j',
    (pin) => {
      expect(pinFault(pin)).toBe('pin-shape');
    },
  );

  test.each(['000000', '777777', '123456', '654321', '789012', '210987', '123123', '480480'])(
    'is not what is guessed first, such as %s',
    (pin) => {
      expect(pinFault(pin)).toBe('pin-easy');
    },
  );

  test.each(['482613', '112233', '121213', '135790', '024681'])('may be %s', (pin) => {
    expect(pinFault(pin)).toBeUndefined();
  });

  test('is left a choice of nearly all there are', () => {
    const all = Array.from({ length: 10 ** PIN_LENGTH }, (_, i) => String(i).padStart(PIN_LENGTH, '0'));
    const easy = all.filter((pin) => pinFault(pin) === 'pin-easy');
    // A half said twice: 1000, the ten of one digit among them; one up and one down each time: 20.
    expect(easy).toHaveLength(1020);
  });
});

describe('what somebody wants to sign in with', () => {
  const withUserName = { name: 'Kit Larsen', address: 'kit.larsen@harrow-bay.invalid' };
  const withMail = { name: 'Kit Larsen', address: 'kit.larsen@harrow.example' };

  test('may be a PIN for somebody without e-mail alone', () => {
    expect(secretFault('482613', withUserName)).toBeUndefined();
    expect(secretFault('482613', withMail)).toBe('password-short');
  });

  test('is held to be a PIN when it is digits alone', () => {
    expect(secretFault('4826139', withUserName)).toBe('pin-shape');
    expect(secretFault('123456', withUserName)).toBe('pin-easy');
    expect(secretFault('48261394826139', withUserName)).toBe('pin-shape');
  });

  test('may be a password for anybody', () => {
    expect(secretFault('torque by feel', withUserName)).toBeUndefined();
    expect(secretFault('torque by feel', withMail)).toBeUndefined();
  });

  test.each(['Kit Larsen', 'kit.larsen@harrow-bay', 'Kit.Larsen@harrow-bay.invalid'])(
    'is not %j, which they are known by',
    (secret) => {
      expect(secretFault(secret, withUserName)).toBe('password-is-name');
    },
  );
});
