'use server';

import { redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { findHeldProfile, type HeldProfile, versionOf } from '@/app/_server/profiles';
import { changeProfile } from '@/app/_server/readiness/change-profile';
import { parseProfile } from '@/app/_server/readiness/parse-profile';
import type { ActResult } from '@/app/_ui/act-result';
import type { FieldFault } from '@/app/questions/draft-answer';
import { idSchema } from '@/lib/source';

const named = z.object({ profileId: idSchema.max(80), version: z.coerce.number().int().min(1) });
const copied = z.object({
  profileId: idSchema.max(80),
  name: z.string().trim().min(1).max(80),
  key: z.string().regex(/^[0-9a-f-]{16,64}$/i),
});

export type ProfileAnswer = { error: string; faults?: readonly FieldFault[] } | { saved: number };

/** Keeps what was changed as the profile's next version; earlier decisions stay under theirs. */
export const saveProfile = action('saveProfile', async (permit, form): Promise<ProfileAnswer> => {
  const found = await profileFor(permit, form);
  if ('error' in found) return found;
  const t = await getTranslations('profiles');
  const next = {
    id: found.profile.id,
    version: versionOf(found) + 1,
    source: { kind: 'assumed', because: t('ownSource') } as const,
  };
  const parsed = await parseProfile(fieldsOf(form).profile, next);
  if (!parsed) return { error: await problem('profile-malformed') };
  if ('faults' in parsed) return { error: await problem('profile-wrong'), faults: parsed.faults };
  const saved = await changeProfile(permit, next, parsed.profile);
  return saved ? { saved: next.version } : { error: await problem('profile-moved') };
});

/** Does without a profile from now on, or takes it up again. Sign-offs under it stay. */
export const retireProfile = action('retireProfile', async (permit, form): Promise<ActResult> => {
  const found = await profileFor(permit, form);
  if ('error' in found) return found;
  const next = { id: found.profile.id, version: versionOf(found) + 1 };
  const body = found.retired ? { ...found.profile, version: next.version } : null;
  return (await changeProfile(permit, next, body)) ? { done: true } : { error: await problem('profile-moved') };
});

/** Begins a profile of the organisation's own with what another asks for, once however often it is sent, and goes to it. */
export const copyProfile = action('copyProfile', async (permit, form): Promise<ActResult> => {
  const parsed = copied.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const { profileId, name, key } = parsed.data;
  const found = await findHeldProfile(database(), organizationOf(permit), profileId);
  if (!found) return { error: await problem('not-there') };
  const id = `${slugOf(name)}-${idFromKey(permit, key).slice(0, 6)}`;
  const t = await getTranslations('profiles');
  const { text, ...rest } = found.profile;
  await changeProfile(
    permit,
    { id, version: 1 },
    {
      ...rest,
      id,
      version: 1,
      text: { en: { ...text.en, name } },
      source: { kind: 'assumed', because: t('ownSource') },
    },
  );
  redirect(`/profiles/${id}`);
});

/** The profile that a form names, as it stood when the form was opened. */
async function profileFor(permit: SignedInPermit, form: unknown): Promise<HeldProfile | { error: string }> {
  const parsed = named.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('profile-malformed') };
  const found = await findHeldProfile(database(), organizationOf(permit), parsed.data.profileId);
  if (!found) return { error: await problem('not-there') };
  return versionOf(found) === parsed.data.version ? found : { error: await problem('profile-moved') };
}

/** Letters and digits of a name, for an address. */
function slugOf(name: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .match(/[a-z0-9]+/g) ?? ['role'];
  return plain.join('-').slice(0, 40).replace(/-$/, '');
}

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
