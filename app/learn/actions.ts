'use server';

import { randomBytes } from 'node:crypto';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { catalogue } from '@/app/_server/catalogue';
import { problem, problemWithFields } from '@/app/_server/problems';
import { requireLearner } from '@/app/_server/session';
import { startAttempt } from '@/app/_server/start-attempt';
import type { ActResult } from '@/app/_ui/act-result';
import { type CaseSpec, parseCaseCode, seedFromBytes } from '@/lib/cases/case-code';
import { ANY_RIG, levels } from './random-choices';

const keySchema = z.string().regex(/^[0-9a-f-]{16,64}$/i);
const randomSchema = z.object({
  key: keySchema,
  rig: z.string().max(80).default(ANY_RIG),
  level: z.enum(levels).default('usual'),
});
const codeSchema = z.object({ key: keySchema, code: z.string().trim().min(1).max(200) });

/** Starts an attempt at a case that is drawn now: on a system and at a level as wished. */
export async function startRandomCase(form: unknown): Promise<ActResult> {
  const learner = await requireLearner();
  const parsed = randomSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return refused(parsed.error);
  const { key, rig: asked, level } = parsed.data;
  const known = [...catalogue().rigs.keys()];
  const rigs = asked === ANY_RIG ? known : known.filter((id) => id === asked);
  const rig = rigs[randomBytes(1).readUInt8() % rigs.length];
  if (rig === undefined) return { error: await problem('unknown-rig', { rig: asked }) };
  const seed = seedFromBytes(randomBytes(4));
  return start(learner.id, key, { rig, seed, ...(level === 'hardest' && { hardest: true }) });
}

/** Starts an attempt at the case that a code stands for. */
export async function startCaseByCode(form: unknown): Promise<ActResult> {
  const learner = await requireLearner();
  const parsed = codeSchema.safeParse(form instanceof FormData ? Object.fromEntries(form) : {});
  if (!parsed.success) return refused(parsed.error);
  const read = parseCaseCode(parsed.data.code, catalogue());
  if ('error' in read) return { error: await problem(`code-${read.error}`, { code: parsed.data.code }) };
  return start(learner.id, parsed.data.key, read.spec);
}

async function refused({ issues }: z.ZodError): Promise<ActResult> {
  return { error: await problemWithFields(issues.map(({ path }) => String(path[0]))) };
}

async function start(learnerId: string, key: string, spec: CaseSpec): Promise<never> {
  const attempt = await startAttempt(learnerId, key, spec);
  revalidatePath('/learn');
  redirect(`/learn/cases/${attempt.id}`);
}
