'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { familyOf, likenesses, lookAlikesOf } from '@/app/_server/alike-causes';
import { catalogue } from '@/app/_server/catalogue';
import { action } from '@/app/_server/guard';
import { caseOf, isSuperseded, readHistory } from '@/app/_server/history';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { startAsWished } from '@/app/_server/start-case';
import { isUntoldWithin } from '@/app/_server/turns/untold';
import { unmetSentence } from '@/app/_server/unmet-sentence';
import type { ActResult } from '@/app/_ui/act-result';
import { ANY } from '../../../random-choices';

const schema = z.object({
  key: z.string().regex(/^[0-9a-f-]{16,64}$/i),
  attemptId: z.string().max(40),
  likeness: z.enum(likenesses),
});

/**
 * Starts a case that is like one whose call is made. What that one was is read here: an attempt that is still open, or of
 * which nothing may be told yet, answers as one that is not there, so that nothing can be learnt about it.
 */
export const startAlike = action('startAlike', async (permit, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success)
    return { error: await problemWithFields(parsed.error.issues.map(({ path }) => String(path[0]))) };
  const { key, attemptId, likeness } = parsed.data;
  const history = await readHistory(deskOf(permit), attemptId);
  if (!history?.call || isUntoldWithin(history, new Date())) return { error: await problem('not-there') };
  if (isSuperseded(history.attempt)) return { error: await problem('attempt-superseded') };
  const theCase = caseOf(history.attempt);
  const { truth, rig } = theCase;
  const causes = likeness === 'family' ? familyOf(truth, rig, catalogue()) : lookAlikesOf(theCase, catalogue());
  const wishes = { rigs: [rig.id], causes };
  const started = await startAsWished({ desk: deskOf(permit), key, coached: history.attempt.coached }, wishes);
  if ('unmet' in started) return { error: await unmetSentence(started, wishes, ANY) };
  revalidatePath('/learn');
  redirect(`/learn/cases/${started.id}`);
});
