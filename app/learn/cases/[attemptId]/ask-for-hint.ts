'use server';

import { revalidatePath } from 'next/cache';
import { z } from 'zod';
import { catalogue } from '@/app/_server/catalogue';
import { decideHint } from '@/app/_server/decide-hint';
import { action } from '@/app/_server/guard';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { takeAct } from '@/app/_server/take-act';
import type { ActResult } from '@/app/_ui/act-result';

const hintSchema = z.object({ attemptId: z.string().min(1).max(80), key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });

/** Stores a hint at the check that would tell most now, in an attempt that is coached. */
export const askForHint = action('askForHint', async (permit, form): Promise<ActResult> => {
  const parsed = hintSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const taken = await takeAct({
    desk: deskOf(permit),
    ...parsed.data,
    decide: (history) => decideHint(history, catalogue()),
  });
  if ('error' in taken) return { error: await problem(taken.error) };
  revalidatePath(`/learn/cases/${parsed.data.attemptId}`);
  return { done: true };
});
