'use server';

import { revalidatePath } from 'next/cache';
import { getTranslations } from 'next-intl/server';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { LONGEST_NAME } from '@/app/_server/entering/newcomer';
import { action } from '@/app/_server/guard';
import { finishIntake, finishOverdueIntakes } from '@/app/_server/intakes/finish-intake';
import { giveIntake as give } from '@/app/_server/intakes/give-intake';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { findProfile } from '@/app/_server/profiles';
import type { ActResult } from '@/app/_ui/act-result';
import { findIntake, takingBackIntake } from '@/db/queries/intakes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { findMember } from '@/db/queries/members';
import { claimThen } from '@/db/together';
import { extraTimes, linkDays } from './choices';

const giveSchema = z.object({
  personId: z.string().max(80).default(''),
  name: z.string().trim().max(LONGEST_NAME).default(''),
  profileId: z.string().min(1).max(80),
  extraTime: z.coerce.number().refine((share) => (extraTimes as readonly number[]).includes(share)),
  linkDays: z.coerce.number().refine((days) => (linkDays as readonly number[]).includes(days)),
});

/** Gives a new-hire check; the link, and what somebody new signs in with, are shown this once. */
export const giveIntake = action('giveIntake', async (permit, form): Promise<ActResult> => {
  const parsed = giveSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const { personId, name, profileId, ...rest } = parsed.data;
  if ((personId === '') === (name === '')) return { error: await problem('intake-person') };
  const profile = await findProfile(database(), organizationOf(permit), profileId);
  if (!profile) return { error: await problem('not-there') };
  if (personId) {
    const member = await findMember(database(), organizationOf(permit), personId);
    if (!member || member.deactivatedAt) return { error: await problem('not-there') };
  }
  const given = await give(permit, { of: personId ? { personId } : { name }, profile, ...rest });
  revalidatePath('/intakes');
  const t = await getTranslations('intakes');
  const signIn = given.signIn && t('signInWith', { name: given.signIn.name, pin: given.signIn.pin });
  return { done: true, toCopy: [given.link, signIn].filter(Boolean).join(' · ') };
});

const intakeSchema = z.object({ intakeId: z.string().min(1).max(80) });

/** Takes the link back before anybody has begun. */
export const takeBackIntake = action('takeBackIntake', async (permit, form): Promise<ActResult> => {
  const intake = await named(organizationOf(permit), form);
  if (!intake) return { error: await problem('not-there') };
  const entry = entryBy(permit, 'intake-taken-back', { personId: intake.learnerId, details: { intake: intake.id } });
  const claim = takingBackIntake(database(), intake);
  if (!(await claimThen(database(), claim, [addingLogEntry(database(), entry)])))
    return { error: await problem('intake-begun') };
  revalidatePath('/intakes');
  return { done: true };
});

/** Stops one that is under way: what was done until now is what it comes to. */
export const stopIntake = action('stopIntake', async (permit, form): Promise<ActResult> => {
  const now = new Date();
  await finishOverdueIntakes({ organizationId: organizationOf(permit) }, now);
  const intake = await named(organizationOf(permit), form);
  if (!intake?.startedAt || intake.finishedAt) return { error: await problem('intake-not-open') };
  await finishIntake(intake, 'stopped', now, permit.session.actor.personId);
  revalidatePath('/intakes');
  revalidatePath(`/intakes/${intake.id}`);
  return { done: true };
});

async function named(organizationId: string, form: unknown) {
  const parsed = intakeSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  return parsed.success ? findIntake(database(), organizationId, parsed.data.intakeId) : undefined;
}
