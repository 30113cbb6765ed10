'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { log } from '@/app/_server/log';
import { entryBy } from '@/app/_server/log-entry';
import { problem, problemWithFields } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { makeBackUp } from '@/app/_server/upkeep/back-ups';
import { invitingFirstAdministrator } from '@/app/_server/upkeep/first-invitation';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingUntakenOrganization, hasMembers } from '@/db/queries/organizations';
import { claimThen, together } from '@/db/together';
import { isShortName } from '@/lib/accounts/sign-in-name';

/** Makes a back-up of everything. */
export const backUpNow = action('backUpNow', async (permit): Promise<ActResult> => {
  let file: string;
  try {
    file = await makeBackUp(database(), new Date());
  } catch (error) {
    // Such as a full disk, which whoever keeps the installation can do something about.
    log.error({ err: error }, 'No back-up could be made');
    return { error: await problem('back-up-failed') };
  }
  await together(database(), [addingLogEntry(database(), entryBy(permit, 'backed-up', { details: { file } }))]);
  revalidatePath('/upkeep');
  return { done: true };
});

const added = z.object({
  name: z.string().trim().min(1).max(80),
  slug: z.string().trim().toLowerCase().min(1).max(40),
});

/** Adds an organisation, and makes the link by which its first administrator comes in. */
export const addOrganization = action('addOrganization', async (permit, form): Promise<ActResult> => {
  const parsed = added.safeParse(fieldsOf(form));
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const { name, slug } = parsed.data;
  if (!isShortName(slug)) return { error: await problem('short-name') };
  const id = randomId();
  const { link, statements } = invitingFirstAdministrator(permit, id);
  const entry = entryBy(permit, 'organization-added', { details: { organization: id } });
  const isAdded = await claimThen(
    database(),
    addingUntakenOrganization(database(), { id, name, slug, createdAt: new Date() }),
    // Both organisations see it: the one that its keeper works in, and the new one.
    [entry, { ...entry, organizationId: id }].map((one) => addingLogEntry(database(), one)).concat(statements),
  );
  if (!isAdded) return { error: await problem('short-name-taken') };
  revalidatePath('/upkeep');
  return { done: true, toCopy: link };
});

const chosen = z.object({ organizationId: z.string().min(1).max(80) });

/** Makes a new link for the first administrator of an organisation that nobody has come in to. */
export const inviteFirstAdministrator = action('inviteFirstAdministrator', async (permit, form): Promise<ActResult> => {
  const parsed = chosen.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['organization']) };
  const { organizationId } = parsed.data;
  const hasSome = await hasMembers(database(), organizationId);
  if (hasSome === undefined) return { error: await problem('not-there') };
  if (hasSome) return { error: await problem('organization-has-people') };
  const { link, statements } = invitingFirstAdministrator(permit, organizationId);
  await together(database(), statements);
  return { done: true, toCopy: link };
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
