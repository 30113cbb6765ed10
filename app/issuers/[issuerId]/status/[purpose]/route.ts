import { findPublicIssuer, inPublic } from '@/app/_server/certificates/public-issuer';
import { signedStatusList } from '@/app/_server/certificates/status-lists';
import { download } from '@/app/_server/guard';
import { purposes } from '@/lib/certificates/status-list';

type Named = Record<'issuerId' | 'purpose', string>;

/** A list of what is not to be accepted, signed anew each time it is asked for. */
export const GET = download('/issuers/[issuerId]/status/[purpose]', async (_, __, { issuerId, purpose }: Named) => {
  const known = purposes.find((one) => one === purpose);
  const found = known && (await findPublicIssuer(issuerId));
  const list = found && (await signedStatusList(issuerId, known, new Date()));
  // A suspension counts at once.
  return inPublic(list, 'application/vc+jwt', 0);
});
