import { marking } from '@/db/queries/question-marks';
import { answering } from '@/db/queries/sitting-answers';
import { claimThen } from '@/db/together';
import { type Answer, type AnswerForm, fitsForm } from '@/lib/questions/answer';
import { database } from '../database';
import { settleSoon } from '../evidence/settle';
import type { Desk } from '../permit';
import { askedQuestion } from '../questions/asked-question';
import { type ParsedAnswer, parseAnswer } from '../questions/parse-answer';
import { currentSitting } from './current-sitting';
import { markPlace } from './mark-place';
import { GRACE, isOpen, type SittingPlace } from './read-sitting';

/** Why an answer is not taken. */
export type NotTaken =
  | { unread: Extract<ParsedAnswer, { problem: unknown }>; asked: SittingPlace }
  | { error: 'not-there' | 'sitting-closed' | 'question-answered' | 'answer-not-offered' };

export interface AnswerRequest {
  desk: Desk;
  sittingId: string;
  place: number;
  /** Made by the client: the same key again finds the answer it already gave. */
  key: string;
  at: Date;
}

/**
 * Stores an answer, and in a drill or a review its mark with it.
 *
 * @returns undefined when it is stored, or was before.
 */
export async function takeAnswer(request: AnswerRequest, form: FormData): Promise<NotTaken | undefined> {
  return take(request, (answerForm) => parseAnswer(form, answerForm));
}

/** The same for an answer that comes from no form. */
export async function takeReadAnswer(request: AnswerRequest, answer: Answer): Promise<NotTaken | undefined> {
  return take(request, () => ({ answer }));
}

async function take(
  request: AnswerRequest,
  read: (answerForm: AnswerForm) => ParsedAnswer,
): Promise<NotTaken | undefined> {
  const { desk, sittingId, place, key, at } = request;
  const current = await currentSitting(desk, sittingId, at);
  if (!current) return { error: 'not-there' };
  if (current.keys.has(key)) return undefined;
  const asked = current.places.find((one) => one.place === place);
  if (!asked) return { error: 'not-there' };
  if (asked.mark) return { error: current.sitting.handedInAt ? 'sitting-closed' : 'question-answered' };
  if (!isOpen(current.sitting, at)) return { error: 'sitting-closed' };
  const { question } = await askedQuestion(asked);
  const parsed = read(question.answer);
  if ('problem' in parsed) return { unread: parsed, asked };
  if (!fitsForm(question.answer, parsed.answer)) return { error: 'answer-not-offered' };
  return store(request, asked, parsed.answer, current.sitting.mode !== 'check');
}

async function store(
  { desk, sittingId, place, key, at }: AnswerRequest,
  asked: SittingPlace,
  body: Answer,
  markNow: boolean,
): Promise<NotTaken | undefined> {
  const db = database();
  const openAt = new Date(at.getTime() - GRACE);
  const { askedAt } = asked;
  const claim = answering(db, desk.learnerId, { sittingId, place, key, body, answeredAt: at, openAt, askedAt });
  const marks = markNow ? [marking(db, await markPlace(asked, body, at))] : [];
  if (await claimThen(db, claim, marks)) {
    if (markNow) await settleSoon(db, desk);
    return undefined;
  }
  // Another tab was first: with this very answer, or with one that closed the question.
  const now = await currentSitting(desk, sittingId, at);
  if (now?.keys.has(key)) return undefined;
  return { error: now?.sitting.handedInAt ? 'sitting-closed' : 'question-answered' };
}
