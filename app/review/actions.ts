'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { readHistory } from '@/app/_server/history';
import { entryBy } from '@/app/_server/log-entry';
import { deskBeside, type SignedInPermit } from '@/app/_server/permit';
import { problem } from '@/app/_server/problems';
import { randomId } from '@/app/_server/random-id';
import { effectiveAttempt } from '@/app/_server/review/effective-work';
import { type Reviewed, readReviewedAttempt, readReviewedSitting } from '@/app/_server/review/reviewed';
import type { ActResult } from '@/app/_ui/act-result';
import { addingComment } from '@/db/queries/comments';
import { addingLogEntry } from '@/db/queries/log-entries';
import { givingPoints } from '@/db/queries/overrides';
import { listMarks } from '@/db/queries/question-marks';
import { awaitsSecond } from '@/db/queries/second-marks';
import { together } from '@/db/together';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';
import { parts } from '@/lib/grading/grade';

const id = z.string().min(1).max(80);
const words = z.string().trim().min(1).max(2000);
const place = z
  .string()
  .regex(/^\d{1,4}$/)
  .transform(Number);
/** Empty takes earlier points back. */
const points = z
  .string()
  .trim()
  .regex(/^(\d{1,3}(\.\d{1,2})?)?$/)
  .transform((text) => (text === '' ? null : Number(text)));

const attemptComment = z.object({ attemptId: id, seq: place.optional(), text: words });
const sittingComment = z.object({ sittingId: id, place: place.optional(), text: words });
const partPoints = z.object({ attemptId: id, part: z.enum(parts), points, reason: words });
const questionPoints = z.object({ sittingId: id, place, points, reason: words });

/** Writes to an attempt, or to one of its acts. */
export const commentOnAttempt = action('commentOnAttempt', async (permit, form): Promise<ActResult> => {
  const parsed = attemptComment.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { attemptId, seq, text } = parsed.data;
  const now = new Date();
  const work = await readReviewedAttempt(permit, attemptId, now);
  if (!work) return { error: await problem('not-there') };
  const history = await readHistory(deskBeside(permit, work.learnerId), attemptId);
  const known = history?.acts.some((act) => act.seq === seq) || history?.call?.seq === seq;
  if (seq !== undefined && !known) return { error: await problem('review-incomplete') };
  const comment = { id: randomId(), attemptId, seq: seq ?? null, text, ...writtenBy(permit, now) };
  return keep(permit, work, [addingComment(database(), comment)], 'comment-written', { attempt: attemptId });
});

/** Writes to a sitting, or to one of its questions. */
export const commentOnSitting = action('commentOnSitting', async (permit, form): Promise<ActResult> => {
  const parsed = sittingComment.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { sittingId, text } = parsed.data;
  const now = new Date();
  const work = await readReviewedSitting(permit, sittingId, now);
  if (!work) return { error: await problem('not-there') };
  const marks = await listMarks(database(), work.learnerId, sittingId);
  const at = parsed.data.place;
  if (at !== undefined && !marks.some((mark) => mark.place === at))
    return { error: await problem('review-incomplete') };
  const comment = { id: randomId(), sittingId, place: at ?? null, text, ...writtenBy(permit, now) };
  return keep(permit, work, [addingComment(database(), comment)], 'comment-written', { sitting: sittingId });
});

/** Gives points in the place of those of a part, or takes earlier ones back. The grade stays as it is. */
export const overridePart = action('overridePart', async (permit, form): Promise<ActResult> => {
  const parsed = partPoints.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { attemptId, ...given } = parsed.data;
  const now = new Date();
  const work = await readReviewedAttempt(permit, attemptId, now);
  if (!work) return { error: await problem('not-there') };
  const history = await readHistory(deskBeside(permit, work.learnerId), attemptId);
  if (!history?.call) return { error: await problem('review-open') };
  const { effective } = await effectiveAttempt(work, attemptId, history.call.grade);
  const part = effective.parts.find((one) => one.part === given.part);
  if (!part) return { error: await problem('review-incomplete') };
  if ((given.points ?? 0) > part.regraded.outOf) return { error: await tooMany(part.regraded.outOf) };
  const row = { id: randomId(), attemptId, ...given, ...givenBy(permit, now) };
  const details = { attempt: attemptId, part: given.part, points: given.points ?? 'taken back' };
  return keep(permit, work, givingPoints(database(), row), 'mark-overridden', details);
});

/** Gives points in the place of those of a question, or takes earlier ones back. */
export const overrideQuestion = action('overrideQuestion', async (permit, form): Promise<ActResult> => {
  const parsed = questionPoints.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { sittingId, ...given } = parsed.data;
  const now = new Date();
  const work = await readReviewedSitting(permit, sittingId, now);
  if (!work) return { error: await problem('not-there') };
  if (!work.finishedAt) return { error: await problem('review-open') };
  const marks = await listMarks(database(), work.learnerId, sittingId);
  const mark = marks.find((one) => one.place === given.place);
  if (!mark) return { error: await problem('review-incomplete') };
  if (await awaitsSecond(database(), { sittingId, place: given.place }))
    return { error: await problem('second-first') };
  if ((given.points ?? 0) > mark.asked.steps) return { error: await tooMany(mark.asked.steps) };
  const row = { id: randomId(), sittingId, ...given, ...givenBy(permit, now) };
  const details = { sitting: sittingId, place: given.place, points: given.points ?? 'taken back' };
  return keep(permit, work, givingPoints(database(), row), 'mark-overridden', details);
});

async function keep(
  permit: SignedInPermit,
  { who, learnerId }: Reviewed,
  statements: Parameters<typeof together>[1],
  event: LogEvent,
  details: LogDetails,
): Promise<ActResult> {
  // A log that named whose work it is would name them to whoever marks without names.
  const personId = 'handle' in who ? null : learnerId;
  await together(database(), [
    ...statements,
    addingLogEntry(database(), entryBy(permit, event, { personId, details })),
  ]);
  revalidatePath('/review', 'layout');
  return { done: true };
}

function tooMany(most: number): Promise<string> {
  return problem('points-too-many', { most });
}

function writtenBy({ session }: SignedInPermit, writtenAt: Date) {
  return { writtenBy: session.actor.personId, writtenAt };
}

function givenBy({ session }: SignedInPermit, givenAt: Date) {
  return { givenBy: session.actor.personId, givenAt };
}

function fieldsOf(form: unknown): object {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
