'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { action } from '@/app/_server/guard';
import { goOn } from '@/app/_server/intakes/next-task';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import type { ActResult } from '@/app/_ui/act-result';

const schema = z.object({
  intakeId: z.string().min(1).max(80),
  leave: z.coerce.number().int().min(1).max(10_000).optional(),
});

/** Goes on to the task that is open, or to the next one; to the end where there is none. */
export const goOnWithIntake = action('goOnWithIntake', async (permit, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['key']) };
  const { intakeId, leave } = parsed.data;
  const at = await goOn(deskOf(permit), intakeId, { now: new Date(), leave });
  if (at !== 'finished' && 'error' in at) return { error: await problem(at.error) };
  revalidatePath(`/learn/intakes/${intakeId}`);
  if (at === 'finished') redirect(`/learn/intakes/${intakeId}`);
  if ('attemptId' in at) redirect(`/learn/cases/${at.attemptId}`);
  revalidatePath(`/learn/sittings/${at.sittingId}`);
  redirect(`/learn/sittings/${at.sittingId}?at=${at.place}`);
});
