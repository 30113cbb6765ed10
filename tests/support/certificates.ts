import { exportJWK, generateKeyPair } from 'jose';
import type { Certificate } from '@/lib/certificates/certificate';
import { hashedName } from '@/lib/certificates/hashed-name';
import { type Issuer, type IssuerKey, type PrivateJwk, thumbprint } from '@/lib/certificates/issuer-key';

/** 2026-03-02, noon UTC. */
export const ISSUED = 1_772_452_800_000;
export const DAY = 86_400_000;
export const ISSUER = 'https://certificates.gullrock.example/issuers/gullrock';

/** Invented, as is everything in it. */
export async function aCertificate(changes: Partial<Certificate> = {}): Promise<Certificate> {
  return {
    id: 'https://certificates.gullrock.example/verify/3f9c2d7a10b84e65f7aa',
    issuer: { id: ISSUER, name: 'Gullrock Harbour College (invented)' },
    holder: {
      id: 'urn:uuid:0f2a5f6c-8a53-4a6b-9d37-1f8a4b2c6d90',
      name: await hashedName('Kit Marlowe-Ness', 'harbour salt'),
    },
    scheme: {
      id: 'https://certificates.gullrock.example/schemes/low-pressure/2',
      name: 'Low-pressure diagnosis',
      version: '2',
      claim: 'May find the cause of a complaint on the low-pressure side without supervision.',
      criteria: 'A check of cases and questions against a line set by a panel; decided by a person who did not teach.',
      alignments: [
        {
          name: 'Filtration',
          about: 'ISCO-08 7231',
          framework: 'Topics of Faultwright',
          code: '56195bd4-70f3-44ba-b595-ab14e91175a2',
          url: 'urn:uuid:56195bd4-70f3-44ba-b595-ab14e91175a2',
        },
      ],
    },
    validFrom: ISSUED,
    validUntil: ISSUED + 730 * DAY,
    results: [{ id: 'filtration', name: 'Filtration', value: 1.2, cut: 0.5, min: -4, max: 4 }],
    status: { index: 94_567, suspensions: `${ISSUER}/status/suspension`, revocations: `${ISSUER}/status/revocation` },
    ...changes,
  };
}

export interface SigningKey {
  key: IssuerKey;
  jwk: PrivateJwk;
  /** As what signs takes it. */
  signs: { id: string; jwk: PrivateJwk };
}

/** A key of the issuer, made the day before it is needed. */
export async function aKey(changes: Partial<Omit<IssuerKey, 'jwk'>> = {}): Promise<SigningKey> {
  const { privateKey } = await generateKeyPair('EdDSA', { extractable: true });
  const { x = '', d = '' } = await exportJWK(privateKey);
  const publicJwk = { kty: 'OKP', crv: 'Ed25519', x } as const;
  const id = changes.id ?? `${ISSUER}/keys/${await thumbprint(publicJwk)}`;
  const jwk = { ...publicJwk, d };
  const key = { jwk: publicJwk, madeAt: ISSUED - DAY, retiredAt: null, compromisedFrom: null, ...changes, id };
  return { key, jwk, signs: { id, jwk } };
}

export function anIssuer(...keys: readonly SigningKey[]): Issuer {
  return { id: ISSUER, keys: keys.map(({ key }) => key) };
}
