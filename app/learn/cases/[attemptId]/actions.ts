'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { catalogue } from '@/app/_server/catalogue';
import { decideCall } from '@/app/_server/decide-call';
import { decideFinding } from '@/app/_server/decide-finding';
import { decideReading } from '@/app/_server/decide-reading';
import { action } from '@/app/_server/guard';
import { caseOf, readHistory } from '@/app/_server/history';
import { makeCall } from '@/app/_server/make-call';
import { deskOf } from '@/app/_server/permit';
import { problem, problemWithFields } from '@/app/_server/problems';
import { closedReason, takeAct } from '@/app/_server/take-act';
import { isUntold, isUntoldWithin } from '@/app/_server/turns/untold';
import type { ActResult } from '@/app/_ui/act-result';
import { parseCall, parseFinding, parseReading } from './parse-forms';

/** Hooks up an instrument and stores what it shows. */
export const takeReading = action('takeReading', async (permit, form): Promise<ActResult> => {
  const parsed = parseReading(form);
  if ('missing' in parsed) return { error: await problemWithFields(parsed.missing) };
  const { attemptId, key, hookUp } = parsed;
  const taken = await takeAct({
    desk: deskOf(permit),
    attemptId,
    key,
    decide: ({ attempt, acts }) => decideReading(caseOf(attempt), catalogue(), acts, hookUp),
  });
  if ('error' in taken) return { error: await problem(taken.error, hookUp) };
  revalidatePath(`/learn/cases/${attemptId}`);
  return { done: true };
});

/** Stores the verdict on one quantity of a reading, with its reason. */
export const writeFinding = action('writeFinding', async (permit, form): Promise<ActResult> => {
  const parsed = parseFinding(form);
  if ('missing' in parsed) return { error: await problemWithFields(parsed.missing) };
  if ('error' in parsed) return { error: await problem(parsed.error, parsed.values) };
  const { attemptId, key, finding } = parsed;
  const taken = await takeAct({
    desk: deskOf(permit),
    attemptId,
    key,
    decide: ({ attempt, acts }) => decideFinding(caseOf(attempt).rig, catalogue(), acts, finding),
  });
  if ('error' in taken) {
    const twice = finding.clears.filter((area) => finding.suspects.includes(area));
    return { error: await problem(taken.error, { unit: finding.entered?.unit ?? '', areas: twice }) };
  }
  revalidatePath(`/learn/cases/${attemptId}`);
  return { done: true };
});

/** Makes the call, grades the attempt and goes on to its debrief. */
export const callCase = action('callCase', async (permit, form): Promise<ActResult> => {
  const parsed = parseCall(form);
  if ('missing' in parsed) return { error: await problemWithFields(parsed.missing) };
  if ('lacking' in parsed) return { error: await problemWithFields(parsed.lacking, 'second-incomplete') };
  const { attemptId, key, choice } = parsed;
  const history = await readHistory(deskOf(permit), attemptId);
  if (!history) return { error: await problem('not-there') };
  const closed = history.call?.key === key ? undefined : closedReason(history, new Date());
  if (closed) return { error: await problem(closed) };
  const decided = decideCall(caseOf(history.attempt).rig, catalogue(), choice);
  if ('error' in decided) return { error: await problem(decided.error) };
  const made = await makeCall(deskOf(permit), attemptId, key, decided.act);
  if ('error' in made) return { error: await problem(made.error) };
  revalidatePath(`/learn/cases/${attemptId}`);
  // In a turn of which nothing may be told yet, the way goes on to its other tasks.
  if (history.turn && isUntold(history.turn, new Date())) redirect(`/learn/turns/${history.turn.turn.id}`);
  if (history.intake && isUntoldWithin(history, new Date())) redirect(`/learn/intakes/${history.intake.id}`);
  redirect(`/learn/cases/${attemptId}/debrief`);
});
