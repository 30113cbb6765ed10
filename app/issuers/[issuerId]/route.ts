import { issuerAddress } from '@/app/_server/certificates/addresses';
import { findPublicIssuer, inPublic } from '@/app/_server/certificates/public-issuer';
import { download } from '@/app/_server/guard';

/** Who issues: the profile that certificates name. */
export const GET = download('/issuers/[issuerId]', async (_, __, { issuerId }: { issuerId: string }) => {
  const found = await findPublicIssuer(issuerId);
  const id = issuerAddress(issuerId);
  return inPublic(found && { '@context': CONTEXTS, id, type: ['Profile'], name: found.name, url: id });
});

const CONTEXTS = ['https://www.w3.org/ns/credentials/v2', 'https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json'];
