import { type Issuer, type IssuerKey, standingOfKey } from './issuer-key';
import { type ReadJws, signatureFits } from './jws';
import type { Refusal } from './refusal';

/**
 * Whether a document is signed as it says.
 *
 * @param trusted  The issuers whose documents are looked at, each with all of its keys.
 * @returns undefined where it is.
 */
export async function signatureRefusal(read: ReadJws, trusted: readonly Issuer[]): Promise<Refusal | undefined> {
  const { iss } = read.payload;
  const issuer = trusted.find(({ id }) => id === iss);
  if (!issuer) return { code: 'wrong-issuer', issuer: typeof iss === 'string' ? iss : '' };
  const key = issuer.keys.find(({ id }) => id === read.keyId);
  const others = trusted.flatMap(({ keys }) => keys).filter((other) => other !== key);
  if (!key) return { code: others.some(({ id }) => id === read.keyId) ? 'wrong-key' : 'unknown-key' };
  if (await signatureFits(read.compact, key.jwk)) return keyRefusal(key, read.payload.iat);
  const fits = await Promise.all(others.map(({ jwk }) => signatureFits(read.compact, jwk)));
  return { code: fits.some(Boolean) ? 'wrong-key' : 'tampered' };
}

function keyRefusal(key: IssuerKey, iat: unknown): Refusal | undefined {
  if (typeof iat !== 'number') return { code: 'schema', at: 'iat' };
  const standing = standingOfKey(key, iat * 1000);
  if (standing === 'good') return undefined;
  return { code: standing === 'compromised' ? 'key-compromised' : 'wrong-key' };
}
