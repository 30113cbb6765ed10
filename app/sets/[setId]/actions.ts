'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import type { SignedInPermit } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { makeSet } from '@/app/_server/sets/make-set';
import { setReaderFor } from '@/app/_server/sets/set-reader';
import type { ActResult } from '@/app/_ui/act-result';
import type { Db } from '@/db/client';
import { addingLogEntry } from '@/db/queries/log-entries';
import {
  archivingSet,
  findNewestVersion,
  restoringSet,
  type SetAct,
  sharingSet,
  unsharingSet,
} from '@/db/queries/sets';
import { claimThen, type Statement } from '@/db/together';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';

const named = z.object({ setId: z.string() });
const keyed = named.extend({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const LONGEST_TITLE = 120;

/** Lets everybody who teaches in the organisation see a set. */
export const shareSet = action('shareSet', async (permit, form) =>
  changeSet(permit, form, sharingSet, 'set-shared', { takenBack: false }),
);

/** Lets nobody see a set any more but who made it and administrators: they alone may do so. */
export const unshareSet = action('unshareSet', async (permit, form) =>
  changeSet(permit, form, unsharingSet, 'set-shared', { takenBack: true }),
);

export const archiveSet = action('archiveSet', async (permit, form) =>
  changeSet(permit, form, archivingSet, 'set-archived', { takenBack: false }),
);

export const restoreSet = action('restoreSet', async (permit, form) =>
  changeSet(permit, form, restoringSet, 'set-archived', { takenBack: true }),
);

/** Makes a set of one's own that says what the newest version of another says, and goes to it. */
export const duplicateSet = action('duplicateSet', async (permit, form): Promise<ActResult> => {
  const parsed = keyed.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  const newest = parsed.success ? await findNewestVersion(database(), parsed.data.setId) : undefined;
  if (!parsed.success || !newest) return { error: await problem('set-malformed') };
  const t = await getTranslations('sets');
  const title = t('copyOf', { title: newest.body.title }).slice(0, LONGEST_TITLE);
  const setId = idFromKey(permit, parsed.data.key);
  await makeSet(permit, setId, { ...newest.body, title });
  redirect(`/sets/${setId}`);
});

async function changeSet(
  permit: SignedInPermit,
  form: unknown,
  changing: (db: Db, act: SetAct) => Statement,
  event: LogEvent,
  details: LogDetails,
): Promise<ActResult> {
  const parsed = named.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('set-malformed') };
  const { setId } = parsed.data;
  const act = { setId, reader: setReaderFor(permit.session.actor), at: new Date() };
  const entry = entryBy(permit, event, { details: { set: setId, ...details } });
  const changed = await claimThen(database(), changing(database(), act), [addingLogEntry(database(), entry)]);
  if (!changed) return { error: await problem('set-moved') };
  revalidatePath('/sets');
  revalidatePath(`/sets/${setId}`);
  return { done: true };
}
