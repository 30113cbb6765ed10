import { keyAddress } from '@/app/_server/certificates/addresses';
import { findPublicIssuer, inPublic } from '@/app/_server/certificates/public-issuer';
import { download } from '@/app/_server/guard';
import { publishedKeySet } from '@/lib/certificates/issuer-key';

type Named = Record<'issuerId' | 'kid', string>;

/** One key, as the head of a certificate names it. */
export const GET = download('/issuers/[issuerId]/keys/[kid]', async (_, __, { issuerId, kid }: Named) => {
  const found = await findPublicIssuer(issuerId);
  const { keys } = publishedKeySet(found?.issuer.keys ?? []);
  return inPublic(
    keys.find((key) => key.kid === keyAddress(issuerId, kid)),
    'application/jwk+json',
  );
});
