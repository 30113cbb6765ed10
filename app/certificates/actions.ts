'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { isPartial } from '@/app/_server/certificates/change-status';
import { issuing } from '@/app/_server/certificates/issue';
import { readSchemeStanding } from '@/app/_server/certificates/read-scheme-standing';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { findToIssue } from '@/db/queries/certificates';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';

const issued = z.object({ applicationId: z.string().max(80), comment: z.string().trim().min(1).max(1000) });

/**
 * Makes a certificate out on a granted application, once. Whoever does it had no part in the holder's training, and what was
 * shown must come to ready by the rules that were applied under.
 */
export const issueCertificate = action('issueCertificate', async (permit, form): Promise<ActResult> => {
  const parsed = issued.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['comment']) };
  const { applicationId, comment } = parsed.data;
  const organizationId = organizationOf(permit);
  const granted = await findToIssue(database(), organizationId, applicationId);
  if (!granted) return { error: await problem('certificate-no-application') };
  const { learnerId, holder, scheme, demo } = granted;
  const issuedBy = permit.session.actor.personId;
  if (await isPartial(organizationId, issuedBy, learnerId)) return { error: await problem('certificate-partial') };
  const now = new Date();
  const standing = await readSchemeStanding({ organizationId, learnerId, scheme }, now);
  if (standing?.decision !== 'ready') return { error: await problem('certificate-not-ready') };
  const grounds = {
    organizationId,
    learnerId,
    holderName: holder,
    scheme,
    applicationId,
    standing,
    comment,
    issuedBy,
    demo,
  };
  const certificate = await issuing(grounds, now);
  if (typeof certificate === 'string') return { error: await problem(`certificate-${certificate}`) };
  const done = await claimThen(database(), certificate.claim, [
    ...certificate.others,
    addingLogEntry(
      database(),
      entryBy(permit, 'certificate-issued', { personId: learnerId, details: { certificate: certificate.id } }),
    ),
  ]);
  if (!done) return { error: await problem('certificate-no-application') };
  revalidatePath('/certificates', 'layout');
  redirect(`/certificates/${certificate.id}`);
});
