'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { action } from '@/app/_server/guard';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { beginTurn as begin } from '@/app/_server/turns/begin-turn';
import type { ActResult } from '@/app/_ui/act-result';

const schema = z.object({ assignmentId: z.string().max(80), key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });

/** Begins a turn at an assignment, or goes on with the one that is open. */
export const beginTurn = action('beginTurn', async (permit, form): Promise<ActResult> => {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return { error: await problemWithFields(['key']) };
  const begun = await begin({ desk: deskOf(permit), ...parsed.data, at: new Date() });
  if ('error' in begun) return { error: await problem(begun.error) };
  revalidatePath('/learn');
  redirect(`/learn/turns/${begun.id}`);
});
