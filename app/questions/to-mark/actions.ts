'use server';

import { redirect } from 'next/navigation';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { markingOf } from '@/app/_server/review/marking-of';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingManualMark, findFreeText } from '@/db/queries/manual-marks';
import { forgettingResult } from '@/db/queries/turn-results';
import { claimThen } from '@/db/together';

const whole = z
  .string()
  .regex(/^\d{1,6}$/)
  .transform(Number);

const markSchema = z.object({
  sittingId: z.string().min(1).max(80),
  place: whole,
  /** The how-manieth mark of this answer it is meant to be: the page showed all before. */
  seq: whole.pipe(z.number().min(1)),
  score: whole,
  comment: z.string().trim().max(2000),
  names: z.literal('yes').optional(),
});

/** Marks free text and goes on to the next. What was given before stays in the record. */
export const markFreeText = action('markFreeText', async (permit, form): Promise<ActResult> => {
  const parsed = markSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('marks-wrong') };
  const { names, ...given } = parsed.data;
  const text = await findFreeText(database(), organizationOf(permit), given);
  if (!text || given.score > text.asked.steps) return { error: await problem('marks-wrong') };
  const { sittingId, place, score } = given;
  const { personId } = permit.session.actor;
  const { isOwn, mayName, isHidden } = await markingOf(text, personId, new Date());
  if (isOwn) return { error: await problem('not-there') };
  if (isHidden) return { error: await problem('second-first') };
  const mark = { ...given, markedBy: personId, markedAt: new Date() };
  const details = { sitting: sittingId, place, score };
  const marked = await claimThen(database(), addingManualMark(database(), mark), [
    forgettingResult(database(), { sittingId }),
    addingLogEntry(
      database(),
      entryBy(permit, 'free-text-marked', { personId: mayName ? text.learnerId : null, details }),
    ),
  ]);
  if (!marked) return { error: await problem('marks-moved') };
  redirect(`/questions/to-mark?kept=yes${names ? '&names=yes' : ''}`);
});
