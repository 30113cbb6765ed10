import { markingQuestion, type NewQuestionMark } from '@/db/queries/sitting-questions';
import type { Statement } from '@/db/together';
import { type Answer, fitsForm } from '@/lib/questions/answer';
import { markAnswer } from '@/lib/questions/mark';
import { database } from '../database';
import { type AskedPlace, askedQuestion } from '../questions/asked-question';

/** Marks one place by an answer; one without an answer, or with one that its question has no room for, earns nothing. */
export async function markingPlace(
  place: AskedPlace & { sittingId: string; place: number },
  answer: Answer | undefined,
  at: Date,
): Promise<Statement> {
  return markingQuestion(database(), await markOf(place, answer, at));
}

async function markOf(
  place: AskedPlace & { sittingId: string; place: number },
  answer: Answer | undefined,
  at: Date,
): Promise<NewQuestionMark> {
  const { question } = await askedQuestion(place);
  const given = answer && fitsForm(question.answer, answer) ? answer : null;
  return {
    sittingId: place.sittingId,
    place: place.place,
    answer: given,
    asked: question,
    mark: given ? markAnswer(question, given) : { credit: 0, score: 0, notes: [] },
    markedAt: at,
  };
}
