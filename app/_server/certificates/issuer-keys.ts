import { exportJWK, generateKeyPair } from 'jose';
import { z } from 'zod';
import { findSealedPrivate, listAllIssuerKeys, listIssuerKeys, type PublicKeyRow } from '@/db/queries/issuer-keys';
import type { issuerKeys } from '@/db/schema';
import { type Issuer, type IssuerKey, keyInUse, type PrivateJwk, thumbprint } from '@/lib/certificates/issuer-key';
import { database } from '../database';
import { log } from '../log';
import { issuerAddress, keyAddress } from './addresses';
import { sealed, unsealed } from './seal';

const publicJwkSchema = z.object({ kty: z.literal('OKP'), crv: z.literal('Ed25519'), x: z.string() });
const privateJwkSchema = publicJwkSchema.extend({ d: z.string() });

/** What an organisation signs with: the key, by its address, with its private half. */
export interface Signer {
  kid: string;
  id: string;
  jwk: PrivateJwk;
}

/** An organisation as an issuer, with all of its keys. */
export async function readIssuer(organizationId: string): Promise<Issuer> {
  return issuerOf(organizationId, await listIssuerKeys(database(), organizationId));
}

/** Every organisation that has keys, as issuers. */
export async function readIssuers(): Promise<Issuer[]> {
  const rows = await listAllIssuerKeys(database());
  const organizationIds = [...new Set(rows.map(({ organizationId }) => organizationId))];
  return organizationIds.map((id) =>
    issuerOf(
      id,
      rows.filter(({ organizationId }) => organizationId === id),
    ),
  );
}

/** What an organisation signs with now; undefined where it has no key in use, or none that opens with the installation's secret. */
export async function findSigner(organizationId: string): Promise<Signer | undefined> {
  const rows = await listIssuerKeys(database(), organizationId);
  const key = keyInUse(rows.map(issuerKeyOf));
  const kid = rows.find((row) => issuerKeyOf(row).id === key?.id)?.kid;
  const sealedPrivate = kid && (await findSealedPrivate(database(), kid));
  const jwk = kid && sealedPrivate ? opened(sealedPrivate, kid) : undefined;
  return key && kid && jwk ? { kid, id: key.id, jwk } : undefined;
}

/** A new key, its private half sealed. */
export async function newIssuerKey(
  organizationId: string,
  createdBy: string,
  createdAt: Date,
): Promise<typeof issuerKeys.$inferInsert & { signer: Signer }> {
  const { privateKey } = await generateKeyPair('EdDSA', { extractable: true });
  const jwk = privateJwkSchema.parse(await exportJWK(privateKey));
  const publicJwk = publicJwkSchema.parse(jwk);
  const kid = await thumbprint(publicJwk);
  const sealedPrivate = sealed(JSON.stringify(jwk), kid);
  const signer = { kid, id: keyAddress(organizationId, kid), jwk };
  return { kid, organizationId, publicJwk: { ...publicJwk }, sealedPrivate, createdBy, createdAt, signer };
}

/** Sealed with another secret, a key is as good as lost: the way on is a new one. */
function opened(sealedPrivate: string, kid: string): PrivateJwk | undefined {
  try {
    return privateJwkSchema.parse(JSON.parse(unsealed(sealedPrivate, kid)));
  } catch (error) {
    log.warn({ kid, err: error }, 'A signing key does not open with the secret of this installation');
    return undefined;
  }
}

function issuerOf(organizationId: string, rows: readonly PublicKeyRow[]): Issuer {
  return { id: issuerAddress(organizationId), keys: rows.map(issuerKeyOf) };
}

/** What a document says of when it was signed is to the second; a key counts from the second it was made in. */
function issuerKeyOf(row: PublicKeyRow): IssuerKey {
  return {
    id: keyAddress(row.organizationId, row.kid),
    jwk: publicJwkSchema.parse(row.publicJwk),
    madeAt: Math.floor(row.createdAt.getTime() / 1000) * 1000,
    retiredAt: row.retiredAt?.getTime() ?? null,
    compromisedFrom: row.compromisedAt && Math.floor(row.compromisedAt.getTime() / 1000) * 1000,
  };
}
