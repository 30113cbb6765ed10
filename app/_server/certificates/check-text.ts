import { findPresentation, usingPresentation } from '@/db/queries/presentations';
import { claimThen } from '@/db/together';
import type { Certificate } from '@/lib/certificates/certificate';
import { readJws } from '@/lib/certificates/jws';
import { verifyPresentation } from '@/lib/certificates/presentation';
import type { PresentationRefusal } from '@/lib/certificates/refusal';
import { type Verification, type VerificationTerms, verifyCertificate } from '@/lib/certificates/verify-certificate';
import { database } from '../database';
import { idInAddress, issuerAddress } from './addresses';
import { readIssuers } from './issuer-keys';
import { type OnRecord, readOnRecord } from './read-standing';

/** Who asked to be shown a certificate, and by which number. */
export interface Asked {
  audience: string;
  nonce: string;
}

/** What a text that somebody was handed came to. */
export interface CheckedText {
  verification: Verification<PresentationRefusal>;
  /** Its record, where there is one. */
  record: OnRecord | undefined;
}

/** Whether a text is a showing, which is made for one request, rather than a certificate that may be shown to anybody. */
export function isShowing(text: string): boolean {
  return readJws(text.trim())?.type === 'vp+jwt';
}

/** Checks a certificate, or a showing of one, by our own records. A showing that is fine is used up. */
export async function checkText(text: string, asked: Asked, now: Date): Promise<CheckedText> {
  let record: OnRecord | undefined;
  const terms: VerificationTerms = {
    trusted: await readIssuers(),
    now: now.getTime(),
    standingOf: async (certificate) => {
      record = await recordOf(certificate);
      return record?.standing;
    },
  };
  const verification = isShowing(text)
    ? await checkShowing(text, asked, terms, now)
    : await verifyCertificate(text, terms);
  return { verification, record };
}

async function recordOf({ id, issuer }: Certificate): Promise<OnRecord | undefined> {
  const ourId = idInAddress(id);
  const record = ourId === undefined ? undefined : await readOnRecord(ourId);
  return record && issuerAddress(record.row.organizationId) === issuer.id ? record : undefined;
}

async function checkShowing(
  text: string,
  asked: Asked,
  terms: VerificationTerms,
  now: Date,
): Promise<Verification<PresentationRefusal>> {
  const { jti } = readJws(text.trim())?.payload ?? {};
  const id = typeof jti === 'string' ? jti.replace(/^urn:uuid:/, '') : '';
  const row = await findPresentation(database(), id);
  const request = { ...asked, expiresAt: row?.endsAt.getTime() ?? 0, usedAt: row?.usedAt?.getTime() ?? null };
  const verification = await verifyPresentation(text, request, terms);
  if (!verification.ok || !row) return verification;
  const first = await claimThen(database(), usingPresentation(database(), id, now), []);
  return first ? verification : { ok: false, refusal: { code: 'replayed', at: now.getTime() } };
}
