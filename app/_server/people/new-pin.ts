import { randomInt } from 'node:crypto';
import { PIN_LENGTH, pinFault } from '@/lib/accounts/secret-rules';

/** A PIN that nobody guesses first. */
export function newPin(): string {
  for (;;) {
    const pin = Array.from({ length: PIN_LENGTH }, () => randomInt(10)).join('');
    if (!pinFault(pin)) return pin;
  }
}
