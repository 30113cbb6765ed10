'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { lookOver } from '@/app/_server/sets/look-over';
import { makeSet } from '@/app/_server/sets/make-set';
import { itemIn, usableItems } from '@/app/_server/sets/parse-set';
import { setToKeep } from '@/app/_server/sets/set-to-keep';
import { addingLogEntry } from '@/db/queries/log-entries';
import { savingVersion } from '@/db/queries/sets';
import { claimThen } from '@/db/together';
import { HoldingView } from './holding/holding-view';
import { ExampleTask } from './preview/example-task';
import type { SetAnswer } from './set-answer';

const keyed = z.object({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const named = z.object({ setId: z.string(), versionId: z.string().min(1).max(80) });
const drawn = z.object({ seed: z.string().regex(/^\d{1,6}$/), answers: z.literal('yes').optional() });

/** Keeps a new set, once however often it is sent, and goes to it. */
export const createSet = action('createSet', async (permit, form): Promise<SetAnswer> => {
  const parsed = keyed.safeParse(fieldsOf(form));
  const set = await setToKeep(fieldsOf(form).set, organizationOf(permit));
  if (!parsed.success || !set) return { error: await problem('set-malformed') };
  if ('faults' in set) return { error: await problem('set-wrong'), faults: set.faults };
  const setId = idFromKey(permit, parsed.data.key);
  await makeSet(permit, setId, set.body);
  redirect(`/sets/${setId}`);
});

/** Keeps what a set is to consist of: in its newest version, or in the next where that one was assigned. */
export const saveSet = action('saveSet', async (permit, form): Promise<SetAnswer> => {
  const parsed = named.safeParse(fieldsOf(form));
  const set = await setToKeep(fieldsOf(form).set, organizationOf(permit));
  if (!parsed.success || !set) return { error: await problem('set-malformed') };
  if ('faults' in set) return { error: await problem('set-wrong'), faults: set.faults };
  const { setId, versionId } = parsed.data;
  const next = { id: randomId(), setId, body: set.body, writtenBy: permit.session.actor.personId, at: new Date() };
  const entry = entryBy(permit, 'set-changed', { details: { set: setId } });
  const saved = await claimThen(database(), savingVersion(database(), versionId, next), [
    addingLogEntry(database(), entry),
  ]);
  if (!saved) return { error: await problem('set-moved') };
  revalidatePath(`/sets/${setId}`);
  return { saved: true };
});

/** Says what a set is made of as it stands, and what of it can never be drawn. Nothing is kept. */
export const lookOverSet = action('lookOverSet', async (permit, form): Promise<SetAnswer> => {
  const usable = usableItems(fieldsOf(form).set);
  if (!usable) return { error: await problem('set-malformed') };
  const { blueprint } = usable.draft;
  const set = { items: usable.items, ...(blueprint !== '' && { blueprint }) };
  const { holding, faults } = await lookOver(set, organizationOf(permit));
  return { holding: <HoldingView holding={holding} />, faults };
});

/** Shows an example of what an item asks for, as a learner sees it or with its answer. Nothing is kept. */
export const previewTask = action('previewTask', async (permit, form): Promise<SetAnswer> => {
  const parsed = drawn.safeParse(fieldsOf(form));
  const item = itemIn(fieldsOf(form).item);
  if (!parsed.success) return { error: await problem('set-malformed') };
  if (!item) return { error: await problem('set-item-wrong') };
  const { seed, answers } = parsed.data;
  const organizationId = organizationOf(permit);
  return {
    shown: <ExampleTask item={item} seed={seed} answers={answers !== undefined} organizationId={organizationId} />,
  };
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
