'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { handInTurn as handIn } from '@/app/_server/turns/hand-in-turn';
import { openCase } from '@/app/_server/turns/open-case';
import type { ActResult } from '@/app/_ui/act-result';
import { readingNudge } from '@/db/queries/nudges';
import { together } from '@/db/together';

const turnSchema = z.object({ turnId: z.string().max(80) });
const taskSchema = turnSchema.extend({ place: z.coerce.number().int().min(1).max(1000) });
const messageSchema = turnSchema.extend({ messageId: z.string().min(1).max(80) });

/** Opens a case of a turn: its attempt starts the first time. */
export const openTask = action('openTask', async (permit, form): Promise<ActResult> => {
  const parsed = read(taskSchema, form);
  if (!parsed) return { error: await problemWithFields(['key']) };
  const opened = await openCase(deskOf(permit), parsed.turnId, parsed.place, new Date());
  if ('error' in opened) return { error: await problem(opened.error) };
  revalidatePath(`/learn/turns/${parsed.turnId}`);
  redirect(`/learn/cases/${opened.attemptId}`);
});

/** Hands a turn in as it stands. */
export const handInTurn = action('handInTurn', async (permit, form): Promise<ActResult> => {
  const parsed = read(turnSchema, form);
  if (!parsed || !(await handIn(deskOf(permit), parsed.turnId, new Date())))
    return { error: await problem('not-there') };
  revalidatePath('/learn');
  redirect(`/learn/turns/${parsed.turnId}`);
});

/** Notes that a message was read. */
export const readMessage = action('readMessage', async (permit, form): Promise<ActResult> => {
  const parsed = read(messageSchema, form);
  if (!parsed) return { error: await problemWithFields(['key']) };
  const { learnerId: userId } = deskOf(permit);
  await together(database(), [readingNudge(database(), { id: parsed.messageId, userId, at: new Date() })]);
  return { done: true };
});

function read<T>(schema: z.ZodType<T>, form: unknown): T | undefined {
  const parsed = schema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  return parsed.success ? parsed.data : undefined;
}
