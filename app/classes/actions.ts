'use server';

import { randomBytes } from 'node:crypto';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { changeClass, classFor } from '@/app/_server/classes/change-class';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { learnsIn } from '@/app/_server/classes/learns-in';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';
import { addingClass, addingClassPlace, changingClass, removingClassPlace } from '@/db/queries/classes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';
import { JOIN_CODE_LENGTH, joinCodeFrom } from '@/lib/accounts/join-code';
import { momentOf } from '@/lib/assignments/local-time';

const DAY_MS = 24 * 60 * 60 * 1000;
/** How long a join code lasts. */
const CODE_DAYS = 14;

const named = z.object({ name: z.string().trim().min(1).max(80) });
const added = named.extend({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const placed = z.object({ personId: z.string().min(1).max(80) });
const zoned = z.object({
  timeZone: z
    .string()
    .max(64)
    .refine((zone) => zone === '' || momentOf('2026-01-01T00:00', zone) !== undefined),
});
const put = z.object({ put: z.enum(['away', 'back']) });

/** Adds a class, once however often the form is sent, and goes to it. */
export const addClass = action('addClass', async (permit, form): Promise<ActResult> => {
  const parsed = added.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const id = idFromKey(permit, parsed.data.key);
  const row = { id, organizationId: organizationOf(permit), name: parsed.data.name, createdAt: new Date() };
  await claimThen(database(), addingClass(database(), row), [
    addingLogEntry(database(), entryBy(permit, 'class-added', { details: { class: id } })),
  ]);
  redirect(`/classes/${id}`);
});

export const renameClass = action('renameClass', async (permit, form): Promise<ActResult> => {
  const parsed = named.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['name']) };
  const { id } = await classFor(form);
  const change = changingClass(database(), id, parsed.data);
  return changeClass(permit, { event: 'class-changed', classId: id, change });
});

/** Says by whose clock a class goes: its own, or the organisation's. */
export const setClassZone = action('setClassZone', async (permit, form): Promise<ActResult> => {
  const parsed = zoned.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['timeZone']) };
  const { id } = await classFor(form);
  const change = changingClass(database(), id, { timeZone: parsed.data.timeZone || null });
  return changeClass(permit, { event: 'class-changed', classId: id, change });
});

/** Puts a class away, or takes it out again. What is put away lets nobody in. */
export const archiveClass = action('archiveClass', async (permit, form): Promise<ActResult> => {
  const parsed = put.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['put']) };
  const away = parsed.data.put === 'away';
  const { id, archivedAt } = await classFor(form);
  if (away === (archivedAt !== null)) return { done: true };
  const change = away
    ? changingClass(database(), id, { archivedAt: new Date(), joinCode: null, joinCodeEndsAt: null })
    : changingClass(database(), id, { archivedAt: null });
  return changeClass(permit, { event: away ? 'class-archived' : 'class-changed', classId: id, change });
});

/** Gives a learner of the same organisation a place. */
export const giveClassPlace = action('giveClassPlace', async (permit, form): Promise<ActResult> => {
  const parsed = placed.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['personId']) };
  const { id, organizationId, archivedAt } = await classFor(form);
  if (archivedAt) return { error: await problem('class-archived') };
  const { personId } = parsed.data;
  if (!(await learnsIn(organizationId, personId))) return { error: await problem('not-there') };
  const change = addingClassPlace(database(), { classId: id, userId: personId, joinedAt: new Date() });
  return changeClass(permit, { event: 'class-place-given', classId: id, personId, change });
});

export const takeClassPlace = action('takeClassPlace', async (permit, form): Promise<ActResult> => {
  const parsed = placed.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problemWithFields(['personId']) };
  const { id } = await classFor(form);
  const { personId } = parsed.data;
  const change = removingClassPlace(database(), { classId: id, userId: personId });
  return changeClass(permit, { event: 'class-place-taken', classId: id, personId, change });
});

/** Makes a code that lets in; one that there was lets in no more. */
export const makeJoinCode = action('makeJoinCode', async (permit, form): Promise<ActResult> => {
  const { id, archivedAt } = await classFor(form);
  if (archivedAt) return { error: await problem('class-archived') };
  const joinCode = joinCodeFrom(randomBytes(JOIN_CODE_LENGTH));
  const joinCodeEndsAt = new Date(Date.now() + CODE_DAYS * DAY_MS);
  const change = changingClass(database(), id, { joinCode, joinCodeEndsAt });
  return changeClass(permit, { event: 'join-code-made', classId: id, change });
});

export const closeJoinCode = action('closeJoinCode', async (permit, form): Promise<ActResult> => {
  const { id, joinCode } = await classFor(form);
  if (!joinCode) return { done: true };
  const change = changingClass(database(), id, { joinCode: null, joinCodeEndsAt: null });
  return changeClass(permit, { event: 'join-code-closed', classId: id, change });
});

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
