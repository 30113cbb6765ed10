import { kinds } from '../questions/kinds';
import type { QuestionSpec } from '../questions/question';
import { kindsOn } from '../questions/question-from-seed';
import { randomStream } from '../random';
import type { SetItem } from './set-body';

export type QuestionsItem = Extract<SetItem, { kind: 'questions' }>;

/**
 * Which question an item of a set asks under a seed: of its kind, or of a kind that the seed draws among those on its topic.
 * Where content has taken the topic from the kind since, the kind is asked on whatever it has.
 *
 * @throws RangeError when nothing is asked on the topic.
 */
export function drawQuestion({ questionKind, topic }: QuestionsItem, seed: string): QuestionSpec {
  const kind = questionKind ?? randomStream(seed, 'kind of question').pick(kindsOn(topic));
  return { kind, seed, ...(kinds.get(kind)?.topics.includes(topic) && { topic }) };
}
