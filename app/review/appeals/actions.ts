'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { problem } from '@/app/_server/problems';
import { reviewedOf } from '@/app/_server/review/appealed';
import type { ActResult } from '@/app/_ui/act-result';
import { decidingAppeal, findAppeal } from '@/db/queries/appeals';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';

const decisionSchema = z.object({
  appealId: z.string().min(1).max(80),
  state: z.enum(['upheld', 'declined']),
  answer: z.string().trim().min(1).max(2000),
});

/** Decides an appeal with an answer. The points that it is about are given apart from it. */
export const decideAppeal = action('decideAppeal', async (permit, form): Promise<ActResult> => {
  const parsed = decisionSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problem('review-incomplete') };
  const { appealId, state, answer } = parsed.data;
  const now = new Date();
  const appeal = await findAppeal(database(), appealId);
  const work = appeal && (await reviewedOf(permit, appeal, now));
  if (!work) return { error: await problem('not-there') };
  const decision = { id: appealId, state, answer, decidedBy: permit.session.actor.personId, decidedAt: now };
  const personId = 'handle' in work.who ? null : work.learnerId;
  const decided = await claimThen(database(), decidingAppeal(database(), decision), [
    addingLogEntry(database(), entryBy(permit, 'appeal-decided', { personId, details: { to: state } })),
  ]);
  if (!decided) return { error: await problem('appeal-decided') };
  revalidatePath('/review', 'layout');
  return { done: true };
});
