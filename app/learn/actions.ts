'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { type Desk, deskOf } from '@/app/_server/permit';
import { startNext } from '@/app/_server/pool/next';
import { problem, problemWithFields } from '@/app/_server/problems';
import { startAsWished, startChosen } from '@/app/_server/start-case';
import { listUntold } from '@/app/_server/turns/untold';
import { unmetSentence } from '@/app/_server/unmet-sentence';
import type { ActResult } from '@/app/_ui/act-result';
import { findAttempt } from '@/db/queries/attempts';
import { formatCaseCode, parseCaseCode } from '@/lib/cases/case-code';
import { difficultyBands } from '@/lib/wishes/difficulty-bands';
import type { Wishes } from '@/lib/wishes/wishes';
import { ANY, difficulties, levels } from './random-choices';

/** Fields that both forms have. */
const start = {
  key: z.string().regex(/^[0-9a-f-]{16,64}$/i),
  coached: z.literal('yes').optional(),
};
const randomSchema = z.object({
  ...start,
  rig: z.string().max(80).default(ANY),
  level: z.enum(levels).default('usual'),
  topic: z.string().max(80).default(ANY),
  difficulty: z.enum(difficulties).default(ANY),
});
const codeSchema = z.object({ ...start, code: z.string().trim().min(1).max(200) });

/** Starts an attempt at a case that is drawn now, as wished. */
export const startRandomCase = action('startRandomCase', async (permit, form): Promise<ActResult> => {
  const parsed = randomSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return refused(parsed.error);
  const { key, coached } = parsed.data;
  const wishes = wishesOf(parsed.data);
  const started = await startAsWished({ desk: deskOf(permit), key, coached: coached === 'yes' }, wishes);
  if ('unmet' in started) return { error: await unmetSentence(started, wishes, parsed.data.difficulty) };
  return goTo(started.id);
});

/** Starts an attempt at the case that a code stands for. */
export const startCaseByCode = action('startCaseByCode', async (permit, form): Promise<ActResult> => {
  const parsed = codeSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return refused(parsed.error);
  const { key, code, coached } = parsed.data;
  const read = parseCaseCode(code, catalogue());
  if ('error' in read) return { error: await problem(`code-${read.error}`, { code }) };
  if (await isAssessedNow(deskOf(permit), formatCaseCode(read.spec))) return { error: await problem('code-assessed') };
  const started = await startChosen({ desk: deskOf(permit), key, coached: coached === 'yes' }, read.spec);
  if ('error' in started) return { error: await problem(started.error, { code }) };
  return goTo(started.id);
});

/** Starts what was chosen to be practised next, or goes on with it. */
export const startNextPractice = action('startNextPractice', async (permit): Promise<ActResult> => {
  const where = await startNext(deskOf(permit), new Date());
  if (!where) return { error: await problem('nothing-to-ask') };
  redirect(where);
});

/** Whether a case is one of theirs of which nothing may be told: its debrief is not to be had by another way. */
async function isAssessedNow(desk: Desk, code: string): Promise<boolean> {
  const { attempts } = await listUntold(database(), desk, new Date());
  const codes = await Promise.all(
    [...attempts.keys()].map(async (id) => (await findAttempt(database(), desk.learnerId, id))?.caseCode),
  );
  return codes.includes(code);
}

function wishesOf({ rig, level, topic, difficulty }: z.infer<typeof randomSchema>): Wishes {
  const bands = difficultyBands(level === 'hardest');
  return {
    ...(rig !== ANY && { rigs: [rig] }),
    ...(topic !== ANY && { topics: [topic] }),
    ...(level === 'hardest' && { hardest: true }),
    ...(difficulty !== ANY && { difficulty: bands[difficulty] }),
  };
}

async function refused({ issues }: z.ZodError): Promise<ActResult> {
  return { error: await problemWithFields(issues.map(({ path }) => String(path[0]))) };
}

function goTo(attemptId: string): never {
  revalidatePath('/learn');
  redirect(`/learn/cases/${attemptId}`);
}
