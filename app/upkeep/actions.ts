'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { env } from '@/app/_server/env';
import { action } from '@/app/_server/guard';
import { hashToken, makeToken } from '@/app/_server/link-token';
import { entryBy } from '@/app/_server/log-entry';
import { problem, problemWithFields } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { makeBackUp } from '@/app/_server/upkeep/back-ups';
import type { ActResult } from '@/app/_ui/act-result';
import { addingInvitation } from '@/db/queries/invitations';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingOrganization, findBySlug } from '@/db/queries/organizations';
import { together } from '@/db/together';
import { isShortName } from '@/lib/accounts/sign-in-name';

const WEEK_MS = 7 * 24 * 60 * 60 * 1000;

/** Makes a back-up of everything. */
export const backUpNow = action('backUpNow', async (permit): Promise<ActResult> => {
  const file = await makeBackUp(new Date());
  await together(database(), [addingLogEntry(database(), entryBy(permit, 'backed-up', { details: { file } }))]);
  revalidatePath('/upkeep');
  return { done: true };
});

const schema = z.object({
  name: z.string().trim().min(1).max(80),
  slug: z.string().trim().toLowerCase().min(1).max(40),
});

/** Adds an organisation, and makes the link by which its first administrator comes in. */
export const addOrganization = action('addOrganization', async (permit, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const { name, slug } = parsed.data;
  if (!isShortName(slug)) return { error: await problem('short-name') };
  if (await findBySlug(database(), slug)) return { error: await problem('short-name-taken') };
  const organizationId = randomId();
  const token = makeToken();
  const at = new Date();
  await together(database(), [
    addingOrganization(database(), { id: organizationId, name, slug, createdAt: at }),
    addingInvitation(database(), {
      id: randomId(),
      organizationId,
      inviterId: permit.session.actor.personId,
      email: null,
      role: 'administrator',
      status: 'pending',
      createdAt: at,
      expiresAt: new Date(at.getTime() + WEEK_MS),
      tokenHash: hashToken(token),
      classId: null,
    }),
    // Both organisations see it: the one that its keeper works in, and the new one.
    addingLogEntry(database(), entryBy(permit, 'organization-added', { details: { organization: organizationId } })),
    addingLogEntry(database(), { ...entryBy(permit, 'organization-added'), organizationId }),
  ]);
  revalidatePath('/upkeep');
  return { done: true, toCopy: `${env.FAULTWRIGHT_ORIGIN}/invited/${token}` };
});
