import { z } from 'zod';
import { signatureRefusal } from './check-signature';
import type { Issuer, PrivateJwk } from './issuer-key';
import { readJws, signed } from './jws';
import { inSeconds, written } from './moments';
import { decodedList, encodedList, type StatusPurpose } from './status-list';

/** A list of statuses, before it is signed. Times are milliseconds since 1970, UTC. */
export interface StatusList {
  /** Its address, which is its id. */
  id: string;
  /** Id of who keeps it. */
  issuer: string;
  purpose: StatusPurpose;
  /** Places whose status is set. */
  set: readonly number[];
  validFrom: number;
  /** From when on a copy of it is too old to go by. */
  validUntil: number;
}

/**
 * A list of statuses as a credential.
 *
 * @source W3C Bitstring Status List 1.0, section 2.2.
 */
export function statusCredentialOf({ id, issuer, purpose, set, validFrom, validUntil }: StatusList) {
  return {
    '@context': ['https://www.w3.org/ns/credentials/v2'],
    id,
    type: ['VerifiableCredential', 'BitstringStatusListCredential'],
    issuer,
    validFrom: written(validFrom),
    validUntil: written(validUntil),
    credentialSubject: {
      id: `${id}#list`,
      type: 'BitstringStatusList',
      statusPurpose: purpose,
      encodedList: encodedList(set),
    },
  };
}

/** A list of statuses, signed as of when it is valid from. */
export function signStatusList(list: StatusList, key: { id: string; jwk: PrivateJwk }): Promise<string> {
  const claims = {
    iss: list.issuer,
    jti: list.id,
    sub: `${list.id}#list`,
    nbf: inSeconds(list.validFrom),
    exp: inSeconds(list.validUntil),
    iat: inSeconds(list.validFrom),
  };
  return signed({ ...statusCredentialOf(list), ...claims }, 'vc+jwt', key);
}

const payloadSchema = z.object({
  id: z.string(),
  type: z.array(z.string()).refine((types) => types.includes('BitstringStatusListCredential')),
  nbf: z.number(),
  exp: z.number(),
  credentialSubject: z.object({ statusPurpose: z.string(), encodedList: z.string() }),
});

/**
 * The bits of a signed list, for whoever has only what is published; undefined where it is not signed as it says, is another
 * list, or is not valid at the moment.
 */
export async function readStatusList(
  compact: string,
  { id, purpose, trusted, now }: { id: string; purpose: StatusPurpose; trusted: readonly Issuer[]; now: number },
): Promise<Uint8Array | undefined> {
  const jws = readJws(compact);
  if (jws?.type !== 'vc+jwt' || (await signatureRefusal(jws, trusted))) return undefined;
  const payload = payloadSchema.safeParse(jws.payload);
  if (!payload.success || payload.data.id !== id) return undefined;
  const { nbf, exp, credentialSubject } = payload.data;
  if (credentialSubject.statusPurpose !== purpose || now < nbf * 1000 || now >= exp * 1000) return undefined;
  return decodedList(credentialSubject.encodedList);
}
