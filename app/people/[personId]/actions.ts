'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { action } from '@/app/_server/guard';
import { changeMember, memberNamed } from '@/app/_server/people/change-member';
import { eraseMember } from '@/app/_server/people/erase-member';
import { givePin } from '@/app/_server/people/give-pin';
import { mergeMembers } from '@/app/_server/people/merge-members';
import { newPin } from '@/app/_server/people/new-pin';
import { RESET_HOURS, resetLink } from '@/app/_server/people/reset-link';
import { rolesGiven } from '@/app/_server/people/roles-given';
import { sendLink } from '@/app/_server/people/send-link';
import { permit as ask } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { memberOf } from '@/app/_server/resource-behind';
import type { ActResult } from '@/app/_ui/act-result';
import { changingDeactivated, changingRoleSafely } from '@/db/queries/people';
import { changingName } from '@/db/queries/users';
import { formatRoles } from '@/lib/accounts/roles';
import { pinFault } from '@/lib/accounts/secret-rules';
import { takesMail } from '@/lib/accounts/sign-in-name';

/** Gives somebody who has a user name a new PIN, made where none is given, and signs them out everywhere. */
export const setPin = action('setPin', async (permit, form): Promise<ActResult> => {
  const person = await memberNamed(permit);
  if (takesMail(person.address)) return { error: await problem('pin-needs-user-name') };
  const typed = form instanceof FormData ? form.get('pin') : undefined;
  const pin = typeof typed === 'string' && typed.trim() !== '' ? typed.trim() : newPin();
  const fault = pinFault(pin);
  if (fault) return { error: await problem(fault) };
  await givePin(permit, person, pin);
  return { done: true, toCopy: pin };
});

export const renamePerson = action('renamePerson', async (permit, form): Promise<ActResult> => {
  const parsed = z.object({ name: z.string().trim().min(1).max(LONGEST_NAME) }).safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const { userId } = await memberNamed(permit);
  return changeMember(permit, 'person-renamed', changingName(database(), { userId, ...parsed.data, at: new Date() }));
});

/** Makes a link to a new password or PIN, shown this once and mailed where that can be done. */
export const makeResetLink = action('makeResetLink', async (permit): Promise<ActResult> => {
  const { userId, address } = await memberNamed(permit);
  const link = await resetLink(userId, RESET_HOURS);
  const done = await changeMember(permit, 'reset-link-made');
  await sendLink('reset', address, link);
  return 'error' in done ? done : { done: true, toCopy: link };
});

export const setRoles = action('setRoles', async (permit, form): Promise<ActResult> => {
  const roles = rolesGiven(permit, form);
  if (!roles) return { error: await problem('roles-given') };
  const key = await memberNamed(permit);
  const role = formatRoles(roles);
  return changeMember(permit, 'roles-set', changingRoleSafely(database(), { ...key, role }), { roles });
});

/** Closes the organisation to somebody. What they did stays. */
export const deactivatePerson = action('deactivatePerson', async (permit): Promise<ActResult> => {
  const key = await memberNamed(permit);
  if (key.userId === permit.session.actor.personId) return { error: await problem('not-yourself') };
  return changeMember(permit, 'person-deactivated', changingDeactivated(database(), { ...key, at: new Date() }));
});

export const reactivatePerson = action('reactivatePerson', async (permit): Promise<ActResult> => {
  const key = await memberNamed(permit);
  return changeMember(permit, 'person-reactivated', changingDeactivated(database(), { ...key, at: null }));
});

/** Makes one person of two that are the same one. Both have to be of the organisation. */
export const mergePeople = action('mergePeople', async (permit, form): Promise<ActResult> => {
  const kept = await memberNamed(permit);
  const doubleId = form instanceof FormData ? form.get('doubleId') : undefined;
  const double = typeof doubleId === 'string' ? await memberOf(kept.organizationId, doubleId) : undefined;
  if (double?.kind !== 'member' || !ask(permit.session, 'member.merge', double))
    return { error: await problem('not-there') };
  if (double.personId === kept.userId) return { error: await problem('same-person') };
  if (double.personId === permit.session.actor.personId) return { error: await problem('not-yourself') };
  const merged = await mergeMembers(permit, kept, double);
  if (!merged) return { error: await problem('last-administrator') };
  revalidatePath('/people');
  redirect(`/people/${kept.userId}`);
});

/** Erases somebody from the organisation, once their name is typed. */
export const erasePerson = action('erasePerson', async (permit, form): Promise<ActResult> => {
  const person = await memberNamed(permit);
  if (person.userId === permit.session.actor.personId) return { error: await problem('not-yourself') };
  const typed = form instanceof FormData ? form.get('name') : undefined;
  if (typeof typed !== 'string' || typed.trim() !== person.name.trim())
    return { error: await problem('name-to-erase') };
  if (!(await eraseMember(permit, person))) return { error: await problem('last-administrator') };
  revalidatePath('/people');
  redirect('/people');
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
