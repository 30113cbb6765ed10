import { type ProblemCode, problem } from '../problems';
import type { ParsedAnswer } from './parse-answer';
import { plainText } from './plain-text';
import type { AnswerView, QuestionView } from './question-view';

/** A sentence that says what was wrong with an answer, naming the part or row as the page does. */
export async function answerProblem(
  { problem: code, at, value = '' }: Extract<ParsedAnswer, { problem: unknown }>,
  { answer }: QuestionView,
): Promise<string> {
  const most = answer.form === 'words' ? answer.most : 0;
  return problem(code satisfies ProblemCode, { value, most, at: at === undefined ? '' : nameOf(at, answer) });
}

function nameOf(at: string, answer: AnswerView): string {
  const parts = answer.form === 'numbers' ? answer.parts : answer.form === 'grid' ? answer.rows : [];
  const found = parts.find(({ id }) => id === at);
  return found ? plainText(found.said) : at;
}
