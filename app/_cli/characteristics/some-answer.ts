import type { Answer } from '@/lib/questions/answer';
import type { QuestionBody } from '@/lib/questions/question';
import type { RandomStream } from '@/lib/random';
import { answerQuestion } from '../demo/answer-question';

/** An answer that may be right in some of its parts: numbers one by one, an order more or less mixed up. */
export function someAnswer(question: QuestionBody, draw: RandomStream): Answer {
  const [right, wrong] = [answerQuestion(question, true, draw), answerQuestion(question, false, draw)];
  if (right.form === 'numbers' && wrong.form === 'numbers') {
    const known = draw.next();
    const parts = Object.keys(right.parts).map((id) => [id, (draw.next() < known ? right : wrong).parts[id]] as const);
    return { form: 'numbers', parts: Object.fromEntries(parts) as typeof right.parts };
  }
  if (right.form === 'order') return { form: 'order', order: mixed(right.order, draw) };
  return wrong;
}

/** Each takes its place by its own and by chance, chance weighing more or less. */
function mixed(order: readonly string[], draw: RandomStream): string[] {
  const chance = 3 * draw.next() * order.length;
  const places = order.map((id, place) => ({ id, place: place + chance * (draw.next() - 0.5) }));
  return places.sort((a, b) => a.place - b.place).map(({ id }) => id);
}
