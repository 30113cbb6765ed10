import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';
import { secret } from '../secret';

const ALGORITHM = 'aes-256-gcm';
const NONCE_BYTES = 12;
const TAG_BYTES = 16;

/**
 * Seals a text with the installation's secret.
 *
 * @param name  What it is sealed under; it opens under no other.
 */
export function sealed(text: string, name: string): string {
  const nonce = randomBytes(NONCE_BYTES);
  const cipher = createCipheriv(ALGORITHM, sealingKey(), nonce).setAAD(Buffer.from(name));
  const bytes = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()]);
  return Buffer.concat([nonce, cipher.getAuthTag(), bytes]).toString('base64url');
}

/** @throws for what was sealed under another name or with another secret, or was changed since. */
export function unsealed(text: string, name: string): string {
  const bytes = Buffer.from(text, 'base64url');
  const decipher = createDecipheriv(ALGORITHM, sealingKey(), bytes.subarray(0, NONCE_BYTES))
    .setAAD(Buffer.from(name))
    .setAuthTag(bytes.subarray(NONCE_BYTES, NONCE_BYTES + TAG_BYTES));
  const opened = [decipher.update(bytes.subarray(NONCE_BYTES + TAG_BYTES)), decipher.final()];
  return Buffer.concat(opened).toString('utf8');
}

/** A key of its own, so that what is sealed with it tells nothing of what else the secret is used for. */
function sealingKey(): Buffer {
  return Buffer.from(hkdfSync('sha256', secret(), '', 'faultwright issuer keys', 32));
}
