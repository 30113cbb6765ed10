import { shownName, takesMail } from './sign-in-name';

export const MIN_PASSWORD = 10;
export const MAX_PASSWORD = 128;
export const PIN_LENGTH = 6;

export type SecretFault = 'password-short' | 'password-long' | 'password-is-name' | 'pin-shape' | 'pin-easy';

/**
 * What is wrong with a new password; undefined when it will do. Length over kinds of signs.
 *
 * @source NIST SP 800-63B, section 5.1.1.2 (from memory): no rules of composition; not the name of the person.
 */
export function passwordFault(password: string, names: readonly string[]): SecretFault | undefined {
  if (password.length < MIN_PASSWORD) return 'password-short';
  if (password.length > MAX_PASSWORD) return 'password-long';
  const plain = password.toLowerCase();
  return names.some((name) => name.length > 0 && plain === name.toLowerCase()) ? 'password-is-name' : undefined;
}

/** What is wrong with a new PIN; undefined when it will do. Guessing is slowed by the lock-out, so only the first guesses are barred. */
export function pinFault(pin: string): SecretFault | undefined {
  if (!new RegExp(`^\\d{${PIN_LENGTH}}$`).test(pin)) return 'pin-shape';
  return isEasy(pin) ? 'pin-easy' : undefined;
}

/** All the same, one up or one down each time, or a half said twice. */
function isEasy(pin: string): boolean {
  const steps = [...pin].slice(1).map((digit, i) => (Number(digit) - Number(pin[i]) + 10) % 10);
  const even = steps.every((step) => step === steps[0]) && [0, 1, 9].includes(steps[0] ?? 0);
  return even || pin.slice(0, PIN_LENGTH / 2) === pin.slice(PIN_LENGTH / 2);
}

/** Whoever chooses what to sign in with. */
export interface SecretOwner {
  name: string;
  /** As stored; only somebody without e-mail may have a PIN. */
  address: string;
}

/** What is wrong with what somebody wants to sign in with from now on: digits alone are a PIN where one is allowed. */
export function secretFault(secret: string, { name, address }: SecretOwner): SecretFault | undefined {
  if (!takesMail(address) && /^\d+$/.test(secret)) return pinFault(secret);
  return passwordFault(secret, [name, address, shownName(address)]);
}
