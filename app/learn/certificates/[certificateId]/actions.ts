'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { recordRefusal } from '@/app/_server/certificates/check-record';
import { findSigner } from '@/app/_server/certificates/issuer-keys';
import { readOnRecord } from '@/app/_server/certificates/read-standing';
import { makeShowing } from '@/app/_server/certificates/show';
import { signedAgain } from '@/app/_server/certificates/sign-again';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { problem, problemWithFields } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import type { ActResult } from '@/app/_ui/act-result';
import { addingCertificateEvent, resigningCertificate } from '@/db/queries/certificates';
import { claimThen } from '@/db/together';

const ticked = z
  .literal('on')
  .optional()
  .transform((value) => value === 'on');
const consented = z.object({ certificateId: z.string(), name: ticked, results: ticked });

/** Says what of a certificate may be shown. It is signed anew with no more than that in it. */
export const setConsent = action('setConsent', async (permit, form): Promise<ActResult> => {
  const parsed = consented.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  const record = parsed.success ? await readOnRecord(parsed.data.certificateId) : undefined;
  if (!parsed.success || !record) return { error: await problem('not-there') };
  const { certificateId, ...consent } = parsed.data;
  const signer = await findSigner(record.row.organizationId);
  if (!signer) return { error: await problem('certificate-no-key') };
  const now = new Date();
  const reason = [consent.name && 'name', consent.results && 'results'].filter(Boolean).join(' ');
  const by = permit.session.actor.personId;
  const event = { id: randomId(), certificateId, kind: 'consent', reason, by, at: now } as const;
  const copy = await signedAgain(record.row, { signer, consent, now });
  const stored = await claimThen(
    database(),
    addingCertificateEvent(database(), event, { after: record.events.length }),
    [resigningCertificate(database(), copy)],
  );
  if (!stored) return { error: await problem('certificate-stands-otherwise') };
  revalidatePath(`/learn/certificates/${certificateId}`);
  return { done: true };
});

export type ShowResult = { error: string } | { showing: string };

const typed = z.string().trim().min(1).max(120);
const asked = z.object({ certificateId: z.string(), audience: typed, nonce: typed });

/** Makes a showing of a certificate for one who asked, good once and not for long. */
export const showCertificate = action('showCertificate', async (_, form): Promise<ShowResult> => {
  const parsed = asked.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['audience', 'nonce']) };
  const { certificateId, ...request } = parsed.data;
  const record = await readOnRecord(certificateId);
  if (!record) return { error: await problem('not-there') };
  const now = new Date();
  if (await recordRefusal(record, now)) return { error: await problem('certificate-not-good') };
  const showing = await makeShowing(record, request, now);
  if (showing === 'no-key') return { error: await problem('certificate-no-key') };
  if (showing === 'shown-already') return { error: await problem('certificate-shown-already') };
  return { showing };
});
