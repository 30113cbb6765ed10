'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { newcomerSchema } from '@/app/_server/entering/newcomer';
import { env } from '@/app/_server/env';
import { action } from '@/app/_server/guard';
import { hashSecret } from '@/app/_server/hash-secret';
import { hashToken, makeToken } from '@/app/_server/link-token';
import { entryBy } from '@/app/_server/log-entry';
import { addingPerson } from '@/app/_server/people/adding-person';
import { newPin } from '@/app/_server/people/new-pin';
import { placeGiven } from '@/app/_server/people/place-given';
import { FIRST_LINK_HOURS, resetLink } from '@/app/_server/people/reset-link';
import { sendLink } from '@/app/_server/people/send-link';
import { organizationOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import type { ActResult } from '@/app/_ui/act-result';
import { addingInvitation, withdrawingInvitation } from '@/db/queries/invitations';
import { addingLogEntry } from '@/db/queries/log-entries';
import { findOrganization } from '@/db/queries/organizations';
import { findUserByAddress } from '@/db/queries/users';
import { claimThen, together } from '@/db/together';
import { formatRoles } from '@/lib/accounts/roles';
import { pinFault } from '@/lib/accounts/secret-rules';
import { addressFrom, shownName, takesMail } from '@/lib/accounts/sign-in-name';

const DAY_MS = 24 * 60 * 60 * 1000;
const INVITATION_DAYS = 7;

const personSchema = newcomerSchema.omit({ secret: true }).extend({ pin: z.string().trim().max(20).default('') });

/**
 * Adds a person. With a user name they get a PIN, made where none is given; with an e-mail a link to set a password. Either
 * is shown this once.
 */
export const addPerson = action('addPerson', async (permit, form): Promise<ActResult> => {
  const parsed = personSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const place = await placeGiven(permit, form);
  if ('error' in place) return { error: await problem(place.error) };
  const organizationId = organizationOf(permit);
  const organization = await findOrganization(database(), organizationId);
  const address = addressFrom(parsed.data.signInName, organization?.slug ?? '');
  if (!address) return { error: await problem('sign-in-name') };
  const pin = takesMail(address) ? undefined : parsed.data.pin || newPin();
  const fault = pin && pinFault(pin);
  if (fault) return { error: await problem(fault) };
  const id = randomId();
  const hash = pin && (await hashSecret(pin));
  // Hashing takes its time; from here on everything happens at once.
  if (await findUserByAddress(database(), address)) return { error: await problem('address-known') };
  const person = { id, name: parsed.data.name, address, hash, organizationId, ...place, at: new Date() };
  await together(database(), [
    ...addingPerson(person),
    addingLogEntry(database(), entryBy(permit, 'person-added', { personId: id, details: { roles: place.roles } })),
  ]);
  revalidatePath('/people');
  if (pin) return { done: true, toCopy: `${shownName(address)} · PIN ${pin}` };
  const link = await resetLink(id, FIRST_LINK_HOURS);
  await sendLink('invitation', address, link);
  return { done: true, toCopy: link };
});

const inviteSchema = z.object({ email: z.union([z.literal(''), z.email().max(200)]).default('') });

/** Makes a link that lets somebody in once, as what it says. */
export const invitePerson = action('invitePerson', async (permit, form): Promise<ActResult> => {
  const parsed = inviteSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['email']) };
  const place = await placeGiven(permit, form);
  if ('error' in place) return { error: await problem(place.error) };
  const token = makeToken();
  const [id, createdAt] = [randomId(), new Date()];
  const email = parsed.data.email.toLowerCase() || null;
  await together(database(), [
    addingInvitation(database(), {
      id,
      organizationId: organizationOf(permit),
      inviterId: permit.session.actor.personId,
      email,
      role: formatRoles(place.roles),
      status: 'pending',
      createdAt,
      expiresAt: new Date(createdAt.getTime() + INVITATION_DAYS * DAY_MS),
      tokenHash: hashToken(token),
      classId: place.classId ?? null,
    }),
    addingLogEntry(database(), entryBy(permit, 'invitation-made', { details: { invitation: id, roles: place.roles } })),
  ]);
  revalidatePath('/people');
  const link = `${env.FAULTWRIGHT_ORIGIN}/invited/${token}`;
  await sendLink('invitation', email, link);
  return { done: true, toCopy: link };
});

/** Takes an invitation back. One that was used meanwhile stays used. */
export const withdrawInvitation = action('withdrawInvitation', async (permit, form): Promise<ActResult> => {
  const invitationId = String(form instanceof FormData ? form.get('invitationId') : '');
  const invitation = { organizationId: organizationOf(permit), invitationId };
  const withdrawn = await claimThen(database(), withdrawingInvitation(database(), invitation), [
    addingLogEntry(database(), entryBy(permit, 'invitation-withdrawn', { details: { invitation: invitationId } })),
  ]);
  revalidatePath('/people');
  return withdrawn ? { done: true } : { error: await problem('link-dead') };
});
