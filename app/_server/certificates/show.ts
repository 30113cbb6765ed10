import { randomUUID } from 'node:crypto';
import { addingPresentation } from '@/db/queries/presentations';
import { claimThen } from '@/db/together';
import { readJws } from '@/lib/certificates/jws';
import { PRESENTATION_LASTS, signPresentation } from '@/lib/certificates/presentation';
import { database } from '../database';
import { issuerAddress } from './addresses';
import type { Asked } from './check-text';
import { findSigner } from './issuer-keys';
import type { OnRecord } from './read-standing';

/** Makes a showing of a certificate for somebody who asked by a number, which it is good for once. */
export async function makeShowing(
  { row }: OnRecord,
  asked: Asked,
  now: Date,
): Promise<string | 'no-key' | 'shown-already'> {
  const signer = await findSigner(row.organizationId);
  if (!signer) return 'no-key';
  const id = randomUUID();
  const what = {
    id: `urn:uuid:${id}`,
    issuer: issuerAddress(row.organizationId),
    // As the certificate in it says, which may have been signed before two accounts became one.
    holder: String(readJws(row.jwt)?.payload.sub ?? ''),
    certificate: row.jwt,
  };
  const endsAt = new Date(now.getTime() + PRESENTATION_LASTS);
  const stored = { id, certificateId: row.id, ...asked, madeAt: now, endsAt };
  const showing = await signPresentation(what, asked, signer, now.getTime());
  const first = await claimThen(database(), addingPresentation(database(), stored), []);
  return first ? showing : 'shown-already';
}
