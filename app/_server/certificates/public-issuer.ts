import { findOrganization } from '@/db/queries/organizations';
import type { Issuer } from '@/lib/certificates/issuer-key';
import { database } from '../database';
import { readIssuer } from './issuer-keys';

/** Seconds for which others may go by a copy of what seldom changes. */
const FRESH = 300;

/** An issuer as anybody may see it; undefined for an organisation that has never made a key. */
export async function findPublicIssuer(organizationId: string): Promise<{ name: string; issuer: Issuer } | undefined> {
  const issuer = await readIssuer(organizationId);
  const organization = issuer.keys.length > 0 ? await findOrganization(database(), organizationId) : undefined;
  return organization && { name: organization.name, issuer };
}

/**
 * Something that anybody may fetch, from any site; not there where it is undefined.
 *
 * @param fresh  Seconds for which others may go by a copy.
 */
export function inPublic(content: object | string | undefined, type = 'application/json', fresh = FRESH): Response {
  if (content === undefined) {
    return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
  }
  const body = typeof content === 'string' ? content : JSON.stringify(content);
  const headers = {
    'content-type': type,
    'cache-control': `public, max-age=${fresh}`,
    'access-control-allow-origin': '*',
  };
  return new Response(body, { headers });
}
