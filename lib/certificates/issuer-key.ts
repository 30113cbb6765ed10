import { calculateJwkThumbprint } from 'jose';

/** Public half of an Ed25519 key. @source RFC 8037, section 2. */
export interface PublicJwk {
  kty: 'OKP';
  crv: 'Ed25519';
  /** 32 bytes, base64url. */
  x: string;
}

/** Both halves. */
export interface PrivateJwk extends PublicJwk {
  d: string;
}

/** A key that an issuer signs with or has signed with. Times are milliseconds since 1970, UTC. */
export interface IssuerKey {
  /** Address of its public half, which is what documents name it by. */
  id: string;
  jwk: PublicJwk;
  madeAt: number;
  /** From then on it signs nothing more, and what it signed before still stands; null while it is in use. */
  retiredAt: number | null;
  /** From then on somebody else may have signed with it; null as far as anybody knows. */
  compromisedFrom: number | null;
}

/** Who signs, with every key of theirs. */
export interface Issuer {
  /** Its address, which is its id. */
  id: string;
  keys: readonly IssuerKey[];
}

/** What a key is worth for something signed at a moment. */
export type KeyStanding = 'good' | 'not-yet-made' | 'retired' | 'compromised';

/** Whether a key may have signed something. A compromise counts for more than a retirement. */
export function standingOfKey(key: IssuerKey, signedAt: number): KeyStanding {
  if (key.compromisedFrom !== null && signedAt >= key.compromisedFrom) return 'compromised';
  if (signedAt < key.madeAt) return 'not-yet-made';
  if (key.retiredAt !== null && signedAt >= key.retiredAt) return 'retired';
  return 'good';
}

/** The key that signs now: the one made last of those that are still in use; undefined where there is none. */
export function keyInUse(keys: readonly IssuerKey[]): IssuerKey | undefined {
  return keys
    .filter(({ retiredAt, compromisedFrom }) => retiredAt === null && compromisedFrom === null)
    .toSorted((one, other) => other.madeAt - one.madeAt)[0];
}

/**
 * SHA-256 thumbprint of a key, base64url.
 *
 * @source RFC 7638, section 3; for these keys RFC 8037, section 2.
 */
export function thumbprint(jwk: PublicJwk): Promise<string> {
  return calculateJwkThumbprint(jwk, 'sha256');
}

/** A key as anybody may fetch it. Names its members one by one, so that a private half never slips in. */
export function publishedKey({ id, jwk }: Pick<IssuerKey, 'id' | 'jwk'>) {
  return { kty: jwk.kty, crv: jwk.crv, x: jwk.x, kid: id, alg: 'EdDSA', use: 'sig' } as const;
}

/**
 * The keys of an issuer that anything may be checked with: retired ones still, compromised ones no more, since whoever
 * fetches the set knows nothing of dates.
 *
 * @source RFC 7517, section 5.
 */
export function publishedKeySet(keys: readonly IssuerKey[]) {
  return { keys: keys.filter(({ compromisedFrom }) => compromisedFrom === null).map(publishedKey) };
}
