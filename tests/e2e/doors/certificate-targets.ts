import { randomInt } from 'node:crypto';
import type { Db } from '@/db/client';
import { certificates, issuerKeys } from '@/db/schema';
import { aCertificate } from '../../support/competency-rows';

/** Public half of RFC 8037, appendix A.2. Nothing is signed with it here. */
const publicJwk = { kty: 'OKP', crv: 'Ed25519', x: '11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo' };
const at = new Date(Date.UTC(2026, 0, 1));

/** A certificate of somebody's, at a place of the status lists of its own. */
export async function addCertificateOf(
  db: Db,
  { id, learnerId, organizationId }: { id: string; learnerId: string; organizationId: string },
): Promise<void> {
  const kid = `key-of-${organizationId}`;
  const key = {
    kid,
    organizationId,
    publicJwk,
    sealedPrivate: '',
    createdBy: 'somebody',
    createdAt: at,
    retiredAt: at,
  };
  await db.insert(issuerKeys).values(key).onConflictDoNothing();
  await db
    .insert(certificates)
    .values(aCertificate({ id, learnerId, organizationId, kid, statusIndex: randomInt(131_072) }));
}
