import type { Refusal } from '@/lib/certificates/refusal';
import { standingRefusal, verifyCertificate } from '@/lib/certificates/verify-certificate';
import { readIssuers } from './issuer-keys';
import type { OnRecord } from './read-standing';

/**
 * Whether a certificate is in force by its record, and its stored copy still signed by a key that can be believed; null where it
 * is. Of a holder who was erased there is no copy left, and the record alone counts.
 */
export async function recordRefusal({ row, standing }: OnRecord, now: Date): Promise<Refusal | null> {
  if (row.jwt === '') {
    const [validFrom, validUntil] = [row.issuedAt.getTime(), row.expiresAt.getTime()];
    return standingRefusal({ validFrom, validUntil }, standing, now.getTime()) ?? null;
  }
  const terms = { trusted: await readIssuers(), now: now.getTime(), standingOf: async () => standing };
  const verification = await verifyCertificate(row.jwt, terms);
  return verification.ok ? null : verification.refusal;
}
