import type { Answer, AnswerForm, Key } from '@/lib/questions/answer';
import type { QuestionBody } from '@/lib/questions/question';
import type { RandomStream } from '@/lib/random';

/** What somebody answers who knows it, or who does not and still answers something. */
export function answerQuestion({ answer: form, key }: QuestionBody, knows: boolean, draw: RandomStream): Answer {
  const right = rightAnswer(form, key);
  return knows ? right : wrongAnswer(form, key, right, draw);
}

function rightAnswer(form: AnswerForm, key: Key): Answer {
  switch (key.form) {
    case 'choice':
      return { form: 'choice', option: key.right[0] ?? '' };
    case 'several':
      return { form: 'several', options: [...key.right] };
    case 'order':
      return { form: 'order', order: [...key.order] };
    case 'numbers':
      return numbersOf(form, (id) => key.parts[id]?.value ?? 0);
    case 'point':
      return { form: 'point', target: key.right[0] ?? '' };
    case 'grid':
      return { form: 'grid', cells: { ...key.cells } };
    case 'stretch':
      return { form: 'stretch', stretch: key.right[0] ?? '' };
    case 'spot':
      return { form: 'spot', shape: key.right[0] ?? '' };
    case 'words':
      return { form: 'words', text: key.model };
  }
}

/** Whatever is drawn, right by luck included. */
function wrongAnswer(form: AnswerForm, key: Key, right: Answer, draw: RandomStream): Answer {
  const one = (items: readonly { id: string }[]) => draw.pick(items).id;
  switch (form.form) {
    case 'choice':
      return { form: 'choice', option: one(form.options) };
    case 'several': {
      const options = form.options.filter(() => draw.next() < 0.5).map(({ id }) => id);
      return { form: 'several', options: options.length > 0 ? options : [one(form.options)] };
    }
    case 'order':
      return { form: 'order', order: right.form === 'order' ? twoSwapped(right.order, draw) : [] };
    case 'numbers':
      return numbersOf(form, (id) => slipOf(key, id, draw));
    case 'point':
      return { form: 'point', target: one(form.targets) };
    case 'grid':
      return { form: 'grid', cells: Object.fromEntries(form.rows.map(({ id }) => [id, one(form.columns)])) };
    case 'stretch':
      return { form: 'stretch', stretch: one(form.stretches) };
    case 'spot':
      return { form: 'spot', shape: one(form.shapes) };
    case 'words':
      return { form: 'words', text: 'I would look it up in the book.' };
  }
}

function numbersOf(form: AnswerForm, numberFor: (id: string) => number): Answer {
  const parts = form.form === 'numbers' ? form.parts : [];
  return {
    form: 'numbers',
    parts: Object.fromEntries(
      parts.map(({ id, units: [unit] }) => [id, { value: numberFor(id), ...(unit && { unit }) }] as const),
    ),
  };
}

function slipOf(key: Key, id: string, draw: RandomStream): number {
  const part = key.form === 'numbers' ? key.parts[id] : undefined;
  if (!part) return 0;
  return part.slips.length > 0 ? draw.pick(part.slips).value : part.value + 5 * part.tolerance;
}

function twoSwapped(order: readonly string[], draw: RandomStream): string[] {
  const at = Math.floor(draw.next() * (order.length - 1));
  return order.map((id, index) => order[index === at ? at + 1 : index === at + 1 ? at : index] ?? id);
}
