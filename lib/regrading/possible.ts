import type { AssignmentRules } from '../assignments/rules';
import type { QuestionBody } from '../questions/question';
import type { SetBody } from '../sets/set-body';
import { isCase, tasksOf } from '../sets/tasks';
import type { Change } from './change';

/**
 * Whether a change can be made at an assignment: its task is one of the set; a further right answer is an option of a question
 * that everybody was asked alike.
 *
 * @param asked  The question at the change's place, where anybody was asked it.
 */
export function isPossible(
  change: Change,
  body: Pick<SetBody, 'items'>,
  { seeds }: Pick<AssignmentRules, 'seeds'>,
  asked: Pick<QuestionBody, 'answer' | 'key'> | undefined,
): boolean {
  if (change.kind === 'weights') return tasksOf(body).some(isCase);
  const task = tasksOf(body).find(({ place }) => place === change.place);
  if (change.kind === 'withdraw') return task !== undefined;
  if (!task || isCase(task) || seeds !== 'same' || asked?.answer.form !== 'choice') return false;
  const { options } = asked.answer;
  return change.right.every((right) => options.some(({ id }) => id === right));
}
