import { exportJWK, generateKeyPair } from 'jose';
import { z } from 'zod';
import { findSealedPrivate, listAllIssuerKeys, listIssuerKeys, type PublicKeyRow } from '@/db/queries/issuer-keys';
import type { issuerKeys } from '@/db/schema';
import { type Issuer, type IssuerKey, keyInUse, type PrivateJwk, thumbprint } from '@/lib/certificates/issuer-key';
import { database } from '../database';
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

/** What an organisation signs with now; undefined where it has no key in use. */
export async function findSigner(organizationId: string): Promise<Signer | undefined> {
  const rows = await listIssuerKeys(database(), organizationId);
  const key = keyInUse(rows.map(issuerKeyOf));
  const kid = rows.find((row) => issuerKeyOf(row).id === key?.id)?.kid;
  const sealedPrivate = kid && (await findSealedPrivate(database(), kid));
  if (!key || !kid || !sealedPrivate) return undefined;
  return { kid, id: key.id, jwk: privateJwkSchema.parse(JSON.parse(unsealed(sealedPrivate, kid))) };
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
