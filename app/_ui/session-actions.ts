'use server';

import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { auth } from '@/app/_server/auth';
import { database } from '@/app/_server/database';
import { workIn } from '@/app/_server/entering/let-in';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';

/** Ends the session on this device. */
export const signOut = action('signOut', async (permit): Promise<never> => {
  const { personId } = permit.session.actor;
  await auth().api.signOut({ headers: await headers() });
  await together(database(), [addingLogEntry(database(), entryBy(permit, 'signed-out', { personId }))]);
  redirect('/');
});

/** Works in another of the organisations that let the person in. */
export const enterOrganization = action('enterOrganization', async ({ resource }): Promise<never> => {
  if (resource.kind === 'organization') await workIn(resource.organizationId);
  redirect('/learn');
});
