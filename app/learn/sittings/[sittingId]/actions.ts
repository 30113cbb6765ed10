'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { readDisplay } from '@/app/_server/display';
import { action } from '@/app/_server/guard';
import { deskOf, type SignedInPermit } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { answerProblem } from '@/app/_server/questions/answer-problem';
import { askedQuestion } from '@/app/_server/questions/asked-question';
import { viewOf } from '@/app/_server/questions/question-view';
import { askNext } from '@/app/_server/sittings/ask-next';
import { currentSitting } from '@/app/_server/sittings/current-sitting';
import { handIn } from '@/app/_server/sittings/hand-in';
import { type NotTaken, takeAnswer } from '@/app/_server/sittings/take-answer';
import type { ActResult } from '@/app/_ui/act-result';
import { findIntakeOf } from '@/db/queries/intakes';
import { recordFlag } from '@/db/queries/sitting-questions';

const sittingSchema = z.object({ sittingId: z.string().max(80) });
const placeSchema = sittingSchema.extend({ place: z.coerce.number().int().min(1).max(10_000) });
const answerSchema = placeSchema.extend({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const flagSchema = placeSchema.extend({ flagged: z.enum(['yes', 'no']) });

/** Answers a question; in a drill or a review the page then shows its mark. */
export const answerQuestion = action('answerQuestion', answer);

/** Saves an answer of a check as it is chosen; the list of its questions then shows it. */
export const saveAnswer = action('saveAnswer', answer);

/** Asks the next question of a drill or a review. */
export const nextQuestion = action('nextQuestion', async (permit, form): Promise<ActResult> => {
  const parsed = read(sittingSchema, form);
  if (!parsed) return { error: await problemWithFields(['key']) };
  const refused = await askNext(deskOf(permit), parsed.sittingId, new Date());
  if (refused) return { error: await problem(refused.error) };
  revalidatePath(`/learn/sittings/${parsed.sittingId}`);
  return { done: true };
});

/** Puts a flag on a question, to come back to it, or takes it off. */
export const flagQuestion = action('flagQuestion', async (permit, form): Promise<ActResult> => {
  const parsed = read(flagSchema, form);
  if (!parsed) return { error: await problemWithFields(['key']) };
  const { sittingId, place, flagged } = parsed;
  const at = new Date();
  const set = await recordFlag(database(), deskOf(permit).learnerId, {
    sittingId,
    place,
    flagged: flagged === 'yes',
    at,
  });
  if (!set) return { error: await problem('sitting-closed') };
  revalidatePath(`/learn/sittings/${sittingId}`);
  return { done: true };
});

/** Hands a sitting in: nothing can be changed any more, and everything is told. */
export const handInSitting = action('handInSitting', async (permit, form): Promise<ActResult> => {
  const parsed = read(sittingSchema, form);
  if (!parsed) return { error: await problemWithFields(['key']) };
  const desk = deskOf(permit);
  const now = new Date();
  const there = await currentSitting(desk, parsed.sittingId, now);
  // A new-hire check ends as a whole.
  if (await findIntakeOf(database(), parsed)) return { error: await problem('not-there') };
  if (!there || !(await handIn(desk, parsed.sittingId, now))) return { error: await problem('not-there') };
  revalidatePath('/learn/questions');
  redirect(`/learn/sittings/${parsed.sittingId}`);
});

async function answer(permit: SignedInPermit, form: unknown): Promise<ActResult> {
  const parsed = read(answerSchema, form);
  if (!parsed || !(form instanceof FormData)) return { error: await problemWithFields(['key']) };
  const refused = await takeAnswer({ desk: deskOf(permit), ...parsed, at: new Date() }, form);
  if (refused) return { error: await sentence(refused) };
  revalidatePath(`/learn/sittings/${parsed.sittingId}`);
  return { done: true };
}

async function sentence(refused: NotTaken): Promise<string> {
  if ('error' in refused) return problem(refused.error);
  const { question, content } = await askedQuestion(refused.asked);
  const { units } = await readDisplay();
  return answerProblem(refused.unread, viewOf(question, { content, catalogue: catalogue(), units }));
}

function read<T>(schema: z.ZodType<T>, form: unknown): T | undefined {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  return parsed.success ? parsed.data : undefined;
}
