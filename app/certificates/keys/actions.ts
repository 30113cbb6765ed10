'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { newIssuerKey, type Signer } from '@/app/_server/certificates/issuer-keys';
import { signedAgain } from '@/app/_server/certificates/sign-again';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { readSettings } from '@/app/_server/organization-settings';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { listSignedWith, resigningCertificate } from '@/db/queries/certificates';
import { addingIssuerKey, compromisingKey, listIssuerKeys, retiringIssuerKeys } from '@/db/queries/issuer-keys';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen, type Statement, together } from '@/db/together';
import { momentOf } from '@/lib/assignments/local-time';

/** Makes a new key, and retires what was signed with so far. */
export const makeIssuerKey = action('makeIssuerKey', async (permit): Promise<ActResult> => {
  const { statements } = await replacingKeys(permit, new Date());
  await together(database(), statements);
  revalidatePath('/certificates', 'layout');
  return { done: true };
});

const compromised = z.object({ kid: z.string().min(1).max(80), from: z.string().max(40) });

/**
 * Marks a key as compromised from a moment on. What it signed since then is signed anew with a new key, so that holders lose
 * nothing but the copies that they have handed out.
 */
export const compromiseKey = action('compromiseKey', async (permit, form): Promise<ActResult> => {
  const parsed = compromised.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  const now = new Date();
  const at = parsed.success ? await momentIn(permit, parsed.data.from, now) : undefined;
  if (!parsed.success || !at) return { error: await problemWithFields(['compromisedFrom']) };
  const { kid } = parsed.data;
  const organizationId = organizationOf(permit);
  const known = (await listIssuerKeys(database(), organizationId)).some((key) => key.kid === kid);
  if (!known) return { error: await problem('not-there') };
  const { statements, signer } = await replacingKeys(permit, now);
  const signed = await listSignedWith(database(), kid);
  const again = await Promise.all(
    signed.filter(({ jwt }) => jwt !== '').map((row) => signedAgain(row, { signer, now })),
  );
  const done = await claimThen(database(), compromisingKey(database(), { kid, organizationId, at }), [
    ...statements,
    ...again.map((copy) => resigningCertificate(database(), copy)),
    addingLogEntry(database(), entryBy(permit, 'issuer-key-compromised', { details: { key: kid } })),
  ]);
  if (!done) return { error: await problem('key-compromised-already') };
  revalidatePath('/certificates', 'layout');
  return { done: true };
});

async function replacingKeys(permit: SignedInPermit, now: Date): Promise<{ statements: Statement[]; signer: Signer }> {
  const organizationId = organizationOf(permit);
  const { signer, ...key } = await newIssuerKey(organizationId, permit.session.actor.personId, now);
  const statements = [
    retiringIssuerKeys(database(), organizationId, now),
    addingIssuerKey(database(), key),
    addingLogEntry(database(), entryBy(permit, 'issuer-key-made', { details: { key: key.kid } })),
  ];
  return { statements, signer };
}

/** By the organisation's clock; undefined for what is no moment, or is yet to come. */
async function momentIn(permit: SignedInPermit, local: string, now: Date): Promise<Date | undefined> {
  if (local === '') return now;
  const { timeZone } = await readSettings(organizationOf(permit));
  const moment = momentOf(local, timeZone);
  return moment && moment.at <= now.getTime() ? new Date(moment.at) : undefined;
}
