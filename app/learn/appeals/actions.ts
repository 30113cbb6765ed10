'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { deskOf, type SignedInPermit } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { isTold } from '@/app/_server/review/who';
import type { ActResult } from '@/app/_ui/act-result';
import { makingAppeal, withdrawingAppeal } from '@/db/queries/appeals';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listMarks } from '@/db/queries/question-marks';
import { findReviewedAttempt, findReviewedSitting, type ReviewedRow } from '@/db/queries/review-work';
import { claimThen } from '@/db/together';
import type { LogDetails } from '@/lib/accounts/log-events';
import { dueAt } from '@/lib/reviewing/appeal';

const id = z.string().min(1).max(80);
const note = z.string().trim().min(1).max(2000);
const place = z
  .string()
  .regex(/^\d{1,4}$/)
  .transform(Number);

const ofAttempt = z.object({ attemptId: id, note });
const ofQuestion = z.object({ sittingId: id, place, note });
const ofAppeal = z.object({ appealId: id });

/** Asks for the mark of a case of one's own to be looked at again. */
export const appealAttempt = action('appealAttempt', async (permit, form): Promise<ActResult> => {
  const parsed = ofAttempt.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { attemptId } = parsed.data;
  const row = await findReviewedAttempt(database(), attemptId);
  const about = { attemptId, sittingId: null, place: null };
  return make(permit, row, { ...about, note: parsed.data.note }, { attempt: attemptId });
});

/** Asks for the mark of a question of one's own to be looked at again. */
export const appealQuestion = action('appealQuestion', async (permit, form): Promise<ActResult> => {
  const parsed = ofQuestion.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { sittingId, ...rest } = parsed.data;
  const row = await findReviewedSitting(database(), sittingId);
  const marks = await listMarks(database(), deskOf(permit).learnerId, sittingId);
  if (!marks.some((mark) => mark.place === rest.place)) return { error: await problem('review-incomplete') };
  return make(permit, row, { attemptId: null, sittingId, ...rest }, { sitting: sittingId, place: rest.place });
});

/** Takes an appeal of one's own back while nobody has decided it. */
export const withdrawAppeal = action('withdrawAppeal', async (permit, form): Promise<ActResult> => {
  const parsed = ofAppeal.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { learnerId } = deskOf(permit);
  const done = await claimThen(database(), withdrawingAppeal(database(), { id: parsed.data.appealId, learnerId }), []);
  if (!done) return { error: await problem('appeal-decided') };
  revalidatePath('/learn', 'layout');
  return { done: true };
});

interface About {
  attemptId: string | null;
  sittingId: string | null;
  place: number | null;
  note: string;
}

async function make(
  permit: SignedInPermit,
  row: ReviewedRow | undefined,
  about: About,
  details: LogDetails,
): Promise<ActResult> {
  const now = new Date();
  if (!row?.finishedAt || !(await isTold(row.assignment, now))) return { error: await problem('appeal-not-yet') };
  const { learnerId, organizationId } = deskOf(permit);
  const appeal = { id: randomId(), organizationId, learnerId, ...about, madeAt: now };
  const made = await claimThen(
    database(),
    makingAppeal(database(), { ...appeal, dueAt: new Date(dueAt(now.getTime())) }),
    [addingLogEntry(database(), entryBy(permit, 'appeal-made', { personId: learnerId, details }))],
  );
  if (!made) return { error: await problem('appeal-open') };
  revalidatePath('/learn', 'layout');
  return { done: true };
}

function fieldsOf(form: unknown): object {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
