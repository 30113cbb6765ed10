'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { catalogue } from '@/app/_server/catalogue';
import { action } from '@/app/_server/guard';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { startCheck as check, startDrill as drill, startReview as review } from '@/app/_server/sittings/start-sitting';
import type { ActResult } from '@/app/_ui/act-result';
import { MINUTES, QUESTIONS } from './check-limits';

const keySchema = z.object({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const drillSchema = keySchema.extend({ topic: z.string().max(80) });
const checkSchema = keySchema.extend({
  questions: z.coerce.number().int().min(QUESTIONS.least).max(QUESTIONS.most),
  minutes: z
    .literal('')
    .transform(() => null)
    .or(z.coerce.number().int().min(MINUTES.least).max(MINUTES.most)),
});

/** Starts a drill on one topic. */
export const startDrill = action('startDrill', async (permit, form): Promise<ActResult> => {
  const parsed = drillSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success || !catalogue().topics.has(parsed.data.topic))
    return { error: await problemWithFields(['topic']) };
  return goTo(await drill({ desk: deskOf(permit), key: parsed.data.key, at: new Date() }, parsed.data.topic));
});

/** Starts a review of what is due. */
export const startReview = action('startReview', async (permit, form): Promise<ActResult> => {
  const parsed = keySchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['key']) };
  return goTo(await review({ desk: deskOf(permit), key: parsed.data.key, at: new Date() }));
});

/** Starts a check of oneself, on some topics or on all. */
export const startCheck = action('startCheck', async (permit, form): Promise<ActResult> => {
  const sent = form instanceof FormData ? form : new FormData();
  const parsed = checkSchema.safeParse(Object.fromEntries(sent));
  const asked = new Set(sent.getAll('topics'));
  const topics = [...catalogue().topics.keys()].filter((id) => asked.has(id));
  if (!parsed.success) return { error: await limitsProblem() };
  if (topics.length === 0) return { error: await problemWithFields(['topic']) };
  const { key, questions, minutes } = parsed.data;
  return goTo(await check({ desk: deskOf(permit), key, at: new Date() }, { topics, questions, minutes }));
});

function limitsProblem(): Promise<string> {
  return problem('check-numbers', { ...QUESTIONS, leastMinutes: MINUTES.least, mostMinutes: MINUTES.most });
}

async function goTo(sittingId: string | undefined): Promise<ActResult> {
  if (sittingId === undefined) return { error: await problem('nothing-to-ask') };
  revalidatePath('/learn/questions');
  redirect(`/learn/sittings/${sittingId}`);
}
