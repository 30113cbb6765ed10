import type { QuestionMark } from '@/db/queries/question-marks';
import { type Answer, fitsForm } from '@/lib/questions/answer';
import { type Mark, markAnswer } from '@/lib/questions/mark';
import { catalogue } from '../catalogue';
import { type AskedPlace, askedQuestion } from '../questions/asked-question';
import { inWords, sayer } from '../questions/say';

/** What a question earns that nobody answered. */
const NOTHING: Mark = { credit: 0, score: 0, notes: [] };

/**
 * Marks one place by an answer, and keeps all that was asked in the words of the day. Without an answer, or with one that its
 * question has no room for, it earns nothing.
 */
export async function markPlace(
  { sittingId, place, ...asked }: AskedPlace & { sittingId: string; place: number },
  answer: Answer | undefined,
  markedAt: Date,
): Promise<QuestionMark> {
  const { question, content } = await askedQuestion(asked);
  const say = sayer(content, catalogue());
  const given = answer && fitsForm(question.answer, answer) ? answer : null;
  const mark = given ? markAnswer(question, given) : NOTHING;
  return { sittingId, place, answer: given, asked: inWords(question, say), mark: inWords(mark, say), markedAt };
}
