'use server';

import { revalidatePath } from 'next/cache';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { settingsFrom } from '@/app/_server/organization-settings';
import { organizationOf } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { changingOrganization, findOrganization } from '@/db/queries/organizations';
import { together } from '@/db/together';
import { changedFields, parseSettings } from './parse-settings';

/** Sets the organisation's name and what it settles for itself. */
export const changeSettings = action('changeSettings', async (permit, form): Promise<ActResult> => {
  const organization = await findOrganization(database(), organizationOf(permit));
  if (!organization) return { error: await problem('not-there') };
  const { id, name } = organization;
  const before = { name, settings: settingsFrom(organization.settings) };
  const after = parseSettings(form instanceof FormData ? Object.fromEntries(form) : {}, before.settings);
  if ('wrong' in after) return { error: await problem(`settings-${after.wrong}`) };
  const changed = changedFields(before, after);
  if (changed.length === 0) return { done: true };
  await together(database(), [
    changingOrganization(database(), { id, ...after }),
    addingLogEntry(database(), entryBy(permit, 'settings-changed', { details: { changed } })),
  ]);
  revalidatePath('/', 'layout');
  return { done: true };
});
