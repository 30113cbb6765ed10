import { type CertificateRow, findCertificate } from '@/db/queries/certificates';
import { findOrganization } from '@/db/queries/organizations';
import type { Consent } from '@/lib/certificates/consent';
import { database } from '../database';
import type { Signer } from './issuer-keys';
import { signedCertificate } from './signed-certificate';

/** What takes the place of a certificate's last copy. */
export type SignedAgain = Pick<CertificateRow, 'id' | 'jwt' | 'kid' | 'consent'>;

/** Signs a certificate anew, with what its holder agrees to now. Stores nothing. */
export async function signedAgain(
  row: CertificateRow,
  { signer, consent = row.consent, now }: { signer: Signer; consent?: Consent; now: Date },
): Promise<SignedAgain> {
  const [named, organization] = await Promise.all([
    findCertificate(database(), row.id),
    findOrganization(database(), row.organizationId),
  ]);
  const facts = { ...row, consent, holderName: named?.holder ?? '', organizationName: organization?.name ?? '' };
  return { id: row.id, jwt: await signedCertificate(facts, signer, now), kid: signer.kid, consent };
}
