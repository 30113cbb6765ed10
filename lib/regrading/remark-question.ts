import type { Answer, Key } from '../questions/answer';
import { markAnswer } from '../questions/mark';
import type { QuestionBody } from '../questions/question';
import type { Change } from './change';

/** Whether a key can be given further right answers: those where one of several options is chosen. */
export function takesFurtherRight(key: Pick<Key, 'form'>): boolean {
  return key.form === 'choice';
}

/**
 * Credit of an answer, 0…1, where changes make further answers right.
 *
 * @param credit  What it earned; null while a person has to mark it.
 * @param place  Of the set's tasks.
 */
export function remarked(
  { asked, answer, credit }: { asked: QuestionBody; answer: Answer | null; credit: number | null },
  changes: readonly Change[],
  place: number,
): number | null {
  const further = changes.flatMap((change) => (change.kind === 'key' && change.place === place ? change.right : []));
  if (!answer || further.length === 0 || !takesFurtherRight(asked.key)) return credit;
  const { key } = asked;
  if (!('right' in key)) return credit;
  return markAnswer({ ...asked, key: { ...key, right: [...key.right, ...further] } }, answer).credit;
}
