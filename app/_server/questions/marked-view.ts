import type { Answer, Key, NumberKey } from '@/lib/questions/answer';
import type { Line } from '@/lib/questions/line';
import type { Mark, NumberOutcome } from '@/lib/questions/mark';
import type { QuestionBody } from '@/lib/questions/question';
import type { Unit } from '@/lib/units';
import type { LetteredStretch } from './figure-view';
import {
  type OptionView,
  type PartView,
  type QuestionContext,
  type QuestionView,
  type ShapeView,
  type TargetView,
  viewOf,
} from './question-view';
import { nameOf, type Said, sayer } from './say';

/** How something that could be chosen stands to the answer and to the key. */
export interface Standing {
  chosen: boolean;
  isRight: boolean;
}

/** A number with its unit; none for a bare one. */
export interface GivenNumber {
  value: number;
  unit?: Unit | undefined;
}

export interface MarkedPart extends PartView {
  given: GivenNumber | undefined;
  outcome: NumberOutcome;
  /** In the first unit of the part. */
  key: Pick<NumberKey, 'value' | 'tolerance'>;
}

/** An answer beside its key. */
export type MarkedAnswer =
  | { form: 'choice' | 'several'; options: readonly (OptionView & Standing & { because?: Said })[] }
  /** `place`: where it belongs, from 1. */
  | { form: 'order'; given: readonly (OptionView & { place: number })[]; right: readonly OptionView[] }
  | { form: 'numbers'; parts: readonly MarkedPart[] }
  | { form: 'point'; targets: readonly (TargetView & Standing & { name: string })[] }
  | { form: 'grid'; rows: readonly (OptionView & { given: Said | undefined; right: Said; isRight: boolean })[] }
  | { form: 'stretch'; stretches: readonly (LetteredStretch & Standing)[] }
  | { form: 'spot'; shapes: readonly (ShapeView & Standing)[] }
  | { form: 'words'; text: string; model: Said };

export type Outcome =
  | { is: 'right' | 'wrong' | 'waiting' | 'unanswered' }
  /** Some of the marks. */
  | { is: 'partly'; score: number; steps: number };

/** All that a screen needs to show a question after its mark. Made from the key: for whoever may see that. */
export interface MarkedView {
  view: QuestionView;
  outcome: Outcome;
  answer: MarkedAnswer;
  /** What speaks against what was chosen, or how a wrong number came about. */
  notes: readonly Said[];
  explanation: readonly Said[];
}

/**
 * A question with its answer marked.
 *
 * @param answer  Null where none was given.
 * @throws RangeError when question, key and answer do not go together.
 */
export function markedView(
  question: QuestionBody,
  answer: Answer | null,
  mark: Mark,
  context: QuestionContext,
): MarkedView {
  const { cautions = [], cautionsAfter = [] } = question;
  const view = { ...viewOf(question, context), cautions: [...cautions, ...cautionsAfter] };
  const say = sayer(context.content, context.catalogue);
  return {
    view,
    outcome: outcomeOf(answer, mark, question.steps),
    answer: markedAnswer({ question, view, answer, mark, say, context }),
    notes: mark.notes.map(say),
    explanation: question.explanation.map(say),
  };
}

function outcomeOf(answer: Answer | null, { credit, score }: Mark, steps: number): Outcome {
  if (answer === null) return { is: 'unanswered' };
  if (credit === null || score === null) return { is: 'waiting' };
  if (score >= steps) return { is: 'right' };
  return score > 0 ? { is: 'partly', score, steps } : { is: 'wrong' };
}

interface Marked {
  question: QuestionBody;
  view: QuestionView;
  answer: Answer | null;
  mark: Mark;
  say: (line: Line) => Said;
  context: QuestionContext;
}

type KeyOf<F extends Key['form']> = Extract<Key, { form: F }>;

/** Each view goes with its key: what content or a kind got wrong there is no learner's doing. */
function markedAnswer({ question: { answer: form, key }, view, answer, mark, say, context }: Marked): MarkedAnswer {
  const shown = view.answer;
  switch (shown.form) {
    case 'choice':
    case 'several': {
      const { right, because = {} } = keyFor(key, shown.form);
      const given = answer?.form === 'choice' ? [answer.option] : answer?.form === 'several' ? answer.options : [];
      return {
        form: shown.form,
        options: standing(shown.options, given, right).map((option) => {
          const line = because[option.id];
          return line ? { ...option, because: say(line) } : option;
        }),
      };
    }
    case 'order':
      return markedOrder(shown.items, keyFor(key, 'order').order, answer?.form === 'order' ? answer.order : []);
    case 'numbers':
      return markedNumbers(shown.parts, keyFor(key, 'numbers'), answer, mark);
    case 'point': {
      const rig = form.form === 'point' ? form.rig : '';
      const given = answer?.form === 'point' ? [answer.target] : [];
      const named = shown.targets.map((target) => ({
        ...target,
        name: nameOf({ name: target.what, id: target.of, of: rig }, context.catalogue),
      }));
      return { form: 'point', targets: standing(named, given, keyFor(key, 'point').right) };
    }
    case 'grid':
      return markedGrid(shown, keyFor(key, 'grid').cells, answer?.form === 'grid' ? answer.cells : {});
    case 'stretch': {
      const given = answer?.form === 'stretch' ? [answer.stretch] : [];
      return { form: 'stretch', stretches: standing(shown.stretches, given, keyFor(key, 'stretch').right) };
    }
    case 'spot': {
      const given = answer?.form === 'spot' ? [answer.shape] : [];
      return { form: 'spot', shapes: standing(shown.shapes, given, keyFor(key, 'spot').right) };
    }
    case 'words': {
      const model = say({ markdown: keyFor(key, 'words').model });
      return { form: 'words', text: answer?.form === 'words' ? answer.text : '', model };
    }
  }
}

function keyFor<F extends Key['form']>(key: Key, form: F): KeyOf<F> {
  if (key.form !== form) throw new RangeError(`A key for ${key.form} does not go with ${form}`);
  return key as KeyOf<F>;
}

function standing<T extends { id: string }>(items: readonly T[], given: readonly string[], right: readonly string[]) {
  return items.map((item) => ({ ...item, chosen: given.includes(item.id), isRight: right.includes(item.id) }));
}

function markedOrder(items: readonly OptionView[], right: readonly string[], given: readonly string[]): MarkedAnswer {
  const inOrder = (ids: readonly string[]) => ids.flatMap((id) => items.find((item) => item.id === id) ?? []);
  return {
    form: 'order',
    given: inOrder(given).map((item) => ({ ...item, place: right.indexOf(item.id) + 1 })),
    right: inOrder(right),
  };
}

function markedNumbers(
  parts: readonly PartView[],
  { parts: keys }: KeyOf<'numbers'>,
  answer: Answer | null,
  mark: Mark,
): MarkedAnswer {
  const given = answer?.form === 'numbers' ? answer.parts : {};
  return {
    form: 'numbers',
    parts: parts.map((part) => {
      const key = keys[part.id];
      if (!key) throw new RangeError(`No key for the part ${part.id}`);
      const { value, tolerance } = key;
      return { ...part, given: given[part.id], outcome: mark.parts?.[part.id] ?? 'wrong', key: { value, tolerance } };
    }),
  };
}

function markedGrid(
  { rows, columns }: Extract<QuestionView['answer'], { form: 'grid' }>,
  cells: Readonly<Record<string, string>>,
  given: Readonly<Record<string, string>>,
): MarkedAnswer {
  const column = (id: string | undefined) => columns.find((one) => one.id === id)?.said;
  return {
    form: 'grid',
    rows: rows.map((row) => {
      const right = column(cells[row.id]);
      if (!right) throw new RangeError(`No key for the row ${row.id}`);
      return { ...row, given: column(given[row.id]), right, isRight: given[row.id] === cells[row.id] };
    }),
  };
}
