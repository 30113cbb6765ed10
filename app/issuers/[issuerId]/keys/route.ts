import { findPublicIssuer, inPublic } from '@/app/_server/certificates/public-issuer';
import { download } from '@/app/_server/guard';
import { publishedKeySet } from '@/lib/certificates/issuer-key';

/** The keys that an issuer's certificates can be checked with. */
export const GET = download('/issuers/[issuerId]/keys', async (_, __, { issuerId }: { issuerId: string }) => {
  const found = await findPublicIssuer(issuerId);
  return inPublic(found && publishedKeySet(found.issuer.keys), 'application/jwk-set+json');
});
