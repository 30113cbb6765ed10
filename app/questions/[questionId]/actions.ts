'use server';

import { redirect } from 'next/navigation';
import { database } from '@/app/_server/database';
import { action } from '@/app/_server/guard';
import { problem } from '@/app/_server/problems';
import { changeVersion } from '@/app/_server/questions/written/change-version';
import { versionActFrom } from '@/app/_server/questions/written/version-act';
import { randomId } from '@/app/_server/random-id';
import type { ActResult } from '@/app/_ui/act-result';
import {
  addingDraft,
  approvingVersion,
  listVersions,
  retiringOthers,
  retiringVersion,
  sendingBack,
} from '@/db/queries/written-questions';

const MOST_NOTE = 2000;

/** Makes a version live; never by whoever wrote it. */
export const approveQuestion = action('approveQuestion', async (permit, form): Promise<ActResult> => {
  const act = versionActFrom(permit, form);
  if (!act) return { error: await problem('question-malformed') };
  const version = (await listVersions(database(), act.questionId)).find(({ id }) => id === act.versionId);
  if (version?.writtenBy === act.personId) return { error: await problem('question-own') };
  const [approval, retirement] = [approvingVersion(database(), act), retiringOthers(database(), act)];
  return changeVersion(permit, 'question-approved', act, [approval, retirement]);
});

/** Makes a version a draft again, with a note; whoever wrote it may take it back without one. */
export const sendBackQuestion = action('sendBackQuestion', async (permit, form): Promise<ActResult> => {
  const act = versionActFrom(permit, form);
  if (!act) return { error: await problem('question-malformed') };
  const version = (await listVersions(database(), act.questionId)).find(({ id }) => id === act.versionId);
  const note =
    form instanceof FormData
      ? String(form.get('note') ?? '')
          .trim()
          .slice(0, MOST_NOTE)
      : '';
  if (note === '' && version?.writtenBy !== act.personId) return { error: await problem('question-note') };
  return changeVersion(permit, 'question-sent-back', act, [sendingBack(database(), act, note || null)]);
});

/** Takes a live version out of use, or gives a draft up. */
export const retireQuestion = action('retireQuestion', async (permit, form): Promise<ActResult> => {
  const act = versionActFrom(permit, form);
  if (!act) return { error: await problem('question-malformed') };
  return changeVersion(permit, 'question-retired', act, [retiringVersion(database(), act)]);
});

/** Begins a draft that says what the newest version says, and goes to it. */
export const beginVersion = action('beginVersion', async (permit, form): Promise<ActResult> => {
  const act = versionActFrom(permit, form);
  if (!act) return { error: await problem('question-malformed') };
  const { questionId, personId, at } = act;
  const [newest] = await listVersions(database(), questionId);
  if (newest?.id !== act.versionId || newest.state === 'draft' || newest.state === 'in-review')
    return { error: await problem('question-moved') };
  const { number, body } = newest;
  const draft = { id: randomId(), questionId, number: number + 1, body, writtenBy: personId, at };
  const begun = await changeVersion(permit, 'question-version-begun', act, [addingDraft(database(), draft)]);
  if ('error' in begun) return begun;
  redirect(`/questions/${questionId}`);
});
