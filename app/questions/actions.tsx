'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { idFromKey } from '@/app/_server/classes/id-from-key';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { entryBy } from '@/app/_server/log-entry';
import { organizationOf, type SignedInPermit } from '@/app/_server/permit';
import { type ProblemCode, problem } from '@/app/_server/problems';
import { fieldFaults } from '@/app/_server/questions/written/fault-words';
import { parseDraft } from '@/app/_server/questions/written/parse-draft';
import { versionActFrom } from '@/app/_server/questions/written/version-act';
import { randomId } from '@/app/_server/random-id';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingDraft, addingWrittenQuestion, changingDraft, sendingForReview } from '@/db/queries/written-questions';
import { claimThen } from '@/db/together';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import type { DraftAnswer } from './draft-answer';
import { QuestionPreview } from './preview/question-preview';

const keyed = z.object({ key: z.string().regex(/^[0-9a-f-]{16,64}$/i) });
const drawn = z.object({ seed: z.string().regex(/^\d{1,6}$/), answers: z.literal('yes').optional() });

/** Keeps a new question as a draft, once however often it is sent, and goes to it. */
export const createQuestion = action('createQuestion', async (permit, form): Promise<DraftAnswer> => {
  const parsed = keyed.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('question-malformed') };
  const draft = await draftIn(permit, form);
  if ('error' in draft) return draft;
  const questionId = idFromKey(permit, parsed.data.key);
  const [writtenBy, at] = [permit.session.actor.personId, new Date()];
  const question = { id: questionId, organizationId: organizationOf(permit), createdBy: writtenBy, createdAt: at };
  const details = { question: questionId };
  await claimThen(database(), addingWrittenQuestion(database(), question), [
    addingDraft(database(), { id: randomId(), questionId, number: 1, body: draft.written, writtenBy, at }),
    addingLogEntry(database(), entryBy(permit, 'question-written', { details })),
  ]);
  revalidatePath('/questions');
  redirect(`/questions/${questionId}`);
});

/** Keeps what a draft says now, and hands it to review where it is told to. */
export const saveQuestion = action('saveQuestion', async (permit, form): Promise<DraftAnswer> => {
  const act = versionActFrom(permit, form);
  if (!act) return { error: await problem('question-malformed') };
  const draft = await draftIn(permit, form);
  if ('error' in draft) return draft;
  const details = { question: act.questionId, version: act.versionId };
  const sends = fieldsOf(form).send === 'yes';
  const entry = entryBy(permit, sends ? 'question-sent' : 'question-changed', { details });
  const saved = await claimThen(database(), changingDraft(database(), act, draft.written), [
    ...(sends ? [sendingForReview(database(), act)] : []),
    addingLogEntry(database(), entry),
  ]);
  if (!saved) return { error: await problem('question-moved') };
  revalidatePath(`/questions/${act.questionId}`);
  return { saved: true };
});

/** Shows what learners would see of a draft. Nothing is kept. */
export const previewQuestion = action('previewQuestion', async (permit, form): Promise<DraftAnswer> => {
  const parsed = drawn.safeParse(fieldsOf(form));
  if (!parsed.success) return { error: await problem('question-malformed') };
  const draft = await draftIn(permit, form);
  if ('error' in draft) return draft;
  const { seed, answers } = parsed.data;
  return { shown: <QuestionPreview written={draft.written} seed={seed} answers={answers !== undefined} /> };
});

type Faulty = Extract<DraftAnswer, { error: string }>;

async function draftIn(permit: SignedInPermit, form: unknown): Promise<{ written: WrittenQuestion } | Faulty> {
  const json = form instanceof FormData ? form.get('question') : undefined;
  const parsed = await parseDraft(json, organizationOf(permit));
  if (parsed && 'written' in parsed) return parsed;
  const code: ProblemCode = parsed ? 'question-wrong' : 'question-malformed';
  const error = await problem(code);
  return parsed ? { error, faults: await fieldFaults(parsed.issues) } : { error };
}

function fieldsOf(form: unknown): Record<string, unknown> {
  return form instanceof FormData ? Object.fromEntries(form) : {};
}
