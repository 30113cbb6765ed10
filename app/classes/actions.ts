'use server';

import { randomBytes } from 'node:crypto';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { classFor, logged } from '@/app/_server/class-for';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { permit as ask, organizationOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { memberOf } from '@/app/_server/resource-behind';
import type { ActResult } from '@/app/_ui/act-result';
import { addingClass, addingClassPlace, changingClass, removingClassPlace } from '@/db/queries/classes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { together } from '@/db/together';
import { JOIN_CODE_LENGTH, joinCodeFrom } from '@/lib/accounts/join-code';

const DAY_MS = 24 * 60 * 60 * 1000;
/** How long a join code lasts. */
const CODE_DAYS = 14;

const named = z.object({ name: z.string().trim().min(1).max(80) });
const placed = z.object({ personId: z.string().min(1).max(80) });

/** Adds a class and goes to it. */
export const addClass = action('addClass', async (permit, form): Promise<ActResult> => {
  const parsed = named.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const id = randomId();
  const row = { id, organizationId: organizationOf(permit), name: parsed.data.name, createdAt: new Date() };
  await together(database(), [
    addingClass(database(), row),
    addingLogEntry(database(), entryBy(permit, 'class-added', { details: { class: id } })),
  ]);
  redirect(`/classes/${id}`);
});

export const renameClass = action('renameClass', async (permit, form): Promise<ActResult> => {
  const parsed = named.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const { id } = await classFor(form);
  return logged(permit, 'class-changed', id, [changingClass(database(), id, parsed.data)]);
});

/** Puts a class away, or takes it out again. What is put away lets nobody in. */
export const archiveClass = action('archiveClass', async (permit, form): Promise<ActResult> => {
  const { id, archivedAt } = await classFor(form);
  const now = archivedAt ? null : new Date();
  const closed = now && { joinCode: null, joinCodeEndsAt: null };
  return logged(permit, now ? 'class-archived' : 'class-changed', id, [
    changingClass(database(), id, { archivedAt: now, ...closed }),
  ]);
});

/** Gives somebody of the same organisation a place. */
export const giveClassPlace = action('giveClassPlace', async (permit, form): Promise<ActResult> => {
  const parsed = placed.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['personId']) };
  const { id, organizationId } = await classFor(form);
  const { personId } = parsed.data;
  const member = await memberOf(organizationId, personId);
  if (!member || !ask(permit.session, 'member.see', member)) return { error: await problem('not-there') };
  const place = { classId: id, userId: personId, joinedAt: new Date() };
  return logged(permit, 'class-place-given', id, [addingClassPlace(database(), place)], personId);
});

export const takeClassPlace = action('takeClassPlace', async (permit, form): Promise<ActResult> => {
  const parsed = placed.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['personId']) };
  const { id } = await classFor(form);
  const { personId } = parsed.data;
  return logged(
    permit,
    'class-place-taken',
    id,
    [removingClassPlace(database(), { classId: id, userId: personId })],
    personId,
  );
});

/** Makes a code that lets in; one that there was lets in no more. */
export const makeJoinCode = action('makeJoinCode', async (permit, form): Promise<ActResult> => {
  const { id, archivedAt } = await classFor(form);
  if (archivedAt) return { error: await problem('class-archived') };
  const joinCode = joinCodeFrom(randomBytes(JOIN_CODE_LENGTH));
  const joinCodeEndsAt = new Date(Date.now() + CODE_DAYS * DAY_MS);
  return logged(permit, 'join-code-made', id, [changingClass(database(), id, { joinCode, joinCodeEndsAt })]);
});

export const closeJoinCode = action('closeJoinCode', async (permit, form): Promise<ActResult> => {
  const { id } = await classFor(form);
  return logged(permit, 'join-code-closed', id, [
    changingClass(database(), id, { joinCode: null, joinCodeEndsAt: null }),
  ]);
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
