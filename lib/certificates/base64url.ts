import { base64url } from 'jose';

/**
 * The bytes that a base64url text stands for; undefined where it is none, or is not written in the one way that is right for
 * its bytes.
 *
 * @source RFC 4648, section 5, without padding, and section 3.5 on the bits left over.
 */
export function bytesIn(text: string): Uint8Array | undefined {
  if (!/^[A-Za-z0-9_-]+$/.test(text) || text.length % 4 === 1) return undefined;
  const bytes = base64url.decode(text);
  return base64url.encode(bytes) === text ? bytes : undefined;
}
