import { createHash, randomBytes } from 'node:crypto';

/** What a link carries: 256 bits that nobody guesses. */
export function makeToken(): string {
  return randomBytes(32).toString('base64url');
}

/** The form in which it is kept, from which the link cannot be made again: SHA-256 in hex. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
