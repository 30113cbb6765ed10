import { answeringQuestion, listSittingAnswers, redrawingQuestion } from '@/db/queries/sitting-questions';
import { claimThen, together } from '@/db/together';
import { database } from '../database';
import type { Desk } from '../permit';
import { askedQuestion, presentVersion } from '../questions/asked-question';
import { type AnswerProblem, parseAnswer } from '../questions/parse-answer';
import { handIn, handInOverdue } from './hand-in';
import { markingPlace } from './mark-place';
import { GRACE, isPresent, readSitting, type SittingPlace } from './read-sitting';

export type AnswerRefusal =
  | { problem: AnswerProblem; at?: string; value?: string }
  | { problem: 'not-there' | 'sitting-closed' | 'question-changed' };

/**
 * Takes an answer to a place of a sitting. In a drill or a review it is marked at once.
 *
 * @param key  Made by the client, so that a retry finds the answer it already gave.
 * @returns undefined when it is stored.
 */
export async function answerPlace(
  desk: Desk,
  { sittingId, place, key }: { sittingId: string; place: number; key: string },
  form: FormData,
  now: Date,
): Promise<AnswerRefusal | undefined> {
  const read = await readSitting(desk, sittingId);
  const asked = read?.places.find((one) => one.place === place);
  if (!read || !asked) return { problem: 'not-there' };
  if (!isPresent(asked)) return redraw(asked);
  const parsed = parseAnswer(form, (await askedQuestion(asked)).question.answer);
  if ('problem' in parsed) return parsed;
  const answering = answeringQuestion(database(), desk.learnerId, {
    ...{ sittingId, place, key, body: parsed.answer, answeredAt: now },
    closedBy: new Date(now.getTime() - GRACE),
  });
  const marks = read.sitting.mode === 'check' ? [] : [await markingPlace(asked, parsed.answer, now)];
  if (await claimThen(database(), answering, marks)) return undefined;
  const answers = await listSittingAnswers(database(), desk.learnerId, sittingId);
  return answers.some((one) => one.key === key) ? undefined : { problem: 'sitting-closed' };
}

/** Content moved since the question was asked: it is asked as it is drawn now, and nothing is lost but the first drawing. */
async function redraw(asked: SittingPlace): Promise<AnswerRefusal> {
  if (!asked.mark) await together(database(), [redrawingQuestion(database(), asked, presentVersion())]);
  return { problem: 'question-changed' };
}

/** Hands in what a learner asked to hand in, or what ran out of time. */
export async function closeSitting(desk: Desk, sittingId: string, now: Date): Promise<'not-there' | undefined> {
  await handInOverdue(desk, now);
  const read = await readSitting(desk, sittingId);
  if (!read) return 'not-there';
  await handIn(desk, read, now);
  return undefined;
}
