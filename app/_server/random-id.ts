import { randomBytes } from 'node:crypto';

/** An id that tells nothing and cannot be guessed: 80 bits in hex. */
export function randomId(): string {
  return randomBytes(10).toString('hex');
}
