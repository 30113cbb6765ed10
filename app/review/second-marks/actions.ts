'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { readReviewedSitting } from '@/app/_server/review/reviewed';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { findAwaitingSecond, givingSecondMark } from '@/db/queries/second-marks';
import { claimThen } from '@/db/together';

const whole = z
  .string()
  .regex(/^\d{1,6}$/)
  .transform(Number);

const markSchema = z.object({
  sittingId: z.string().min(1).max(80),
  place: whole,
  score: whole,
  comment: z.string().trim().max(2000),
});

/** Marks free text a second time, by somebody who has not seen the first mark, and goes on to the next. */
export const giveSecondMark = action('giveSecondMark', async (permit, form): Promise<ActResult> => {
  const parsed = markSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('marks-wrong') };
  const given = parsed.data;
  const { personId } = permit.session.actor;
  const now = new Date();
  const work = await readReviewedSitting(permit, given.sittingId, now);
  if (!work) return { error: await problem('not-there') };
  const marker = { organizationId: organizationOf(permit), markerId: personId };
  const text = await findAwaitingSecond(database(), marker, given);
  if (!text || given.score > text.asked.steps) return { error: await problem('marks-wrong') };
  const { sittingId, place, score } = given;
  // A log that named whose work it is would name them to whoever marks without names.
  const about = {
    personId: 'handle' in work.who ? null : work.learnerId,
    details: { sitting: sittingId, place, score },
  };
  const marked = await claimThen(
    database(),
    givingSecondMark(database(), { ...given, markedBy: personId, markedAt: now }),
    [addingLogEntry(database(), entryBy(permit, 'second-mark-given', about))],
  );
  if (!marked) return { error: await problem('marks-moved') };
  redirect('/review/second-marks?kept=yes');
});
