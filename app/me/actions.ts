'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { changeSecret } from '@/app/_server/account/change-secret';
import { database } from '@/app/_server/database';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { changingErasureAsked, findMember } from '@/db/queries/members';
import { removingOtherSessions, removingSession } from '@/db/queries/sessions';
import { changingName } from '@/db/queries/users';
import { claimThen, together } from '@/db/together';

const nameSchema = z.object({ name: z.string().trim().min(1).max(LONGEST_NAME) });
const sessionSchema = z.object({ sessionId: z.string().min(1).max(80) });
const wishSchema = z.object({ organizationId: z.string().min(1).max(80), wish: z.enum(['ask', 'take-back']) });
const secretSchema = z.object({ presentSecret: z.string().min(1).max(200), secret: z.string().min(1).max(200) });

/** Gives oneself another name. */
export const renameSelf = action('renameSelf', async (permit, form): Promise<ActResult> => {
  const parsed = nameSchema.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const { personId } = permit.session.actor;
  await together(database(), [
    changingName(database(), { userId: personId, name: parsed.data.name, at: new Date() }),
    addingLogEntry(database(), entryBy(permit, 'person-renamed', { personId })),
  ]);
  revalidatePath('/', 'layout');
  return { done: true };
});

/** Sets oneself another password or PIN. Whoever is signed in with the old one elsewhere is signed out. */
export const changePassword = action('changePassword', async (permit, form): Promise<ActResult> => {
  const parsed = secretSchema.safeParse(fieldsOf(form));
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const refused = await changeSecret(permit, parsed.data);
  if (refused) return { error: await problem(refused.error, refused.values) };
  redirect('/me?done=secret');
});

/** Signs oneself out on one device. */
export const signOutSession = action('signOutSession', async (permit, form): Promise<ActResult> => {
  const parsed = sessionSchema.safeParse(fieldsOf(form));
  const { personId } = permit.session.actor;
  const { sessionId = '' } = parsed.data ?? {};
  const done = await claimThen(database(), removingSession(database(), { userId: personId, sessionId }), [
    addingLogEntry(database(), entryBy(permit, 'signed-out-elsewhere', { personId, details: { sessionId } })),
  ]);
  revalidatePath('/me');
  return done ? { done } : { error: await problem('not-there') };
});

/** Signs oneself out everywhere but here. */
export const signOutElsewhere = action('signOutElsewhere', async (permit): Promise<ActResult> => {
  const { id: sessionId, actor } = permit.session;
  const { personId } = actor;
  await claimThen(database(), removingOtherSessions(database(), { userId: personId, sessionId }), [
    addingLogEntry(database(), entryBy(permit, 'signed-out-elsewhere', { personId, details: { everywhere: true } })),
  ]);
  revalidatePath('/me');
  return { done: true };
});

/** Asks to be erased from an organisation that has them, whether it lets them in or not, or takes that back. */
export const askErasure = action('askErasure', async (permit, form): Promise<ActResult> => {
  const parsed = wishSchema.safeParse(fieldsOf(form));
  const { personId } = permit.session.actor;
  const member = parsed.data && (await findMember(database(), parsed.data.organizationId, personId));
  if (!parsed.success || !member) return { error: await problem('not-there') };
  const takenBack = parsed.data.wish === 'take-back';
  if (takenBack === (member.erasureAskedAt === null)) return { done: true };
  const at = takenBack ? null : new Date();
  const { organizationId } = member;
  const entry = { ...entryBy(permit, 'erasure-asked', { personId, details: { takenBack } }), organizationId };
  await together(database(), [
    changingErasureAsked(database(), { organizationId, userId: personId, at }),
    addingLogEntry(database(), entry),
  ]);
  revalidatePath('/me');
  return { done: true };
});

function fieldsOf(form: unknown): object {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
