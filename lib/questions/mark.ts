import { fromSi, toSi, type Unit } from '../units';
import type { Answer, AnswerForm, Key, NumberKey, NumberPart } from './answer';
import { orderShare } from './kendall';
import type { Line } from './line';
import type { QuestionBody } from './question';

/** What came of one number. */
export type NumberOutcome = 'right' | 'follows' | 'wrong';

/** What an answer is worth, with what there is to say of it. */
export interface Mark {
  /** 0…1; null while a person has to mark it. */
  credit: number | null;
  /** `credit` in the question's steps, rounded down; null with it. */
  score: number | null;
  /** What speaks against what was chosen, or how a wrong number came about. */
  notes: readonly Line[];
  /** By part, where numbers were asked for. */
  parts?: Readonly<Record<string, NumberOutcome>>;
}

/** A number that is right only by an earlier wrong one earns so much of its share. Assumed, common practice has no figure. */
const FOLLOW_THROUGH = 0.75;

/**
 * Marks an answer that fits its form.
 *
 * @throws RangeError when answer and key are of different forms.
 */
export function markAnswer(question: Pick<QuestionBody, 'answer' | 'key' | 'steps'>, answer: Answer): Mark {
  const { credit, ...rest } = judge(question.answer, question.key, answer);
  // A rounding error must not cost a step.
  const score = credit === null ? null : Math.floor(credit * question.steps + 1e-9);
  return { credit, score, ...rest };
}

type Judged = Omit<Mark, 'score'>;

function judge(form: AnswerForm, key: Key, answer: Answer): Judged {
  if (key.form === 'choice' && answer.form === 'choice') return oneOf(key.right, answer.option, key.because);
  if (key.form === 'several' && answer.form === 'several') return severalOf(key, answer.options);
  if (key.form === 'order' && answer.form === 'order')
    return { credit: orderShare(key.order, answer.order), notes: [] };
  if (key.form === 'point' && answer.form === 'point') return oneOf(key.right, answer.target);
  if (key.form === 'stretch' && answer.form === 'stretch') return oneOf(key.right, answer.stretch);
  if (key.form === 'spot' && answer.form === 'spot') return oneOf(key.right, answer.shape);
  if (key.form === 'grid' && answer.form === 'grid') return gridOf(key.cells, answer.cells);
  if (key.form === 'words' && answer.form === 'words') return { credit: null, notes: [] };
  if (form.form === 'numbers' && key.form === 'numbers' && answer.form === 'numbers')
    return numbersOf(form.parts, key.parts, answer.parts);
  throw new RangeError(`An answer of the form ${answer.form} to a question of the form ${key.form}`);
}

function oneOf(right: readonly string[], chosen: string, because: Readonly<Record<string, Line>> = {}): Judged {
  if (right.includes(chosen)) return { credit: 1, notes: [] };
  const note = because[chosen];
  return { credit: 0, notes: note ? [note] : [] };
}

/** Every right one chosen counts for, every wrong one against; never below nothing. */
function severalOf({ right, because = {} }: Extract<Key, { form: 'several' }>, chosen: readonly string[]): Judged {
  const hits = chosen.filter((id) => right.includes(id)).length;
  const wrong = chosen.filter((id) => !right.includes(id));
  const credit = right.length === 0 ? Number(wrong.length === 0) : Math.max(0, hits - wrong.length) / right.length;
  return { credit, notes: wrong.flatMap((id) => because[id] ?? []) };
}

function gridOf(right: Readonly<Record<string, string>>, given: Readonly<Record<string, string>>): Judged {
  const rows = Object.keys(right);
  return { credit: rows.filter((row) => given[row] === right[row]).length / rows.length, notes: [] };
}

type GivenNumbers = Extract<Answer, { form: 'numbers' }>['parts'];

function numbersOf(
  parts: readonly NumberPart[],
  keys: Readonly<Record<string, NumberKey>>,
  given: GivenNumbers,
): Judged {
  const inFirstUnit = (id: string) => {
    const part = parts.find((one) => one.id === id);
    const number = given[id];
    return number && convert(number.value, number.unit, part?.units[0]);
  };
  const outcomes: Record<string, NumberOutcome> = {};
  const notes: Line[] = [];
  for (const { id } of parts) {
    const [key, value] = [keys[id], inFirstUnit(id)];
    if (!key || value === undefined) throw new RangeError(`No number for the part ${id}`);
    outcomes[id] = outcomeOf(key, value, key.follows && inFirstUnit(key.follows.part));
    const slip = outcomes[id] === 'wrong' && key.slips.find((one) => near(value, one.value, key.tolerance));
    if (slip) notes.push(slip.line);
  }
  const worth = { right: 1, follows: FOLLOW_THROUGH, wrong: 0 };
  const sum = Object.values(outcomes).reduce((total, outcome) => total + worth[outcome], 0);
  return { credit: sum / parts.length, notes, parts: outcomes };
}

function outcomeOf(
  { value, tolerance, follows }: NumberKey,
  given: number,
  earlier: number | undefined,
): NumberOutcome {
  if (near(given, value, tolerance)) return 'right';
  if (!follows || earlier === undefined) return 'wrong';
  // In proportion, where the number that follows is of another size.
  const due = follows.value(earlier);
  const scaled = value === 0 ? tolerance : tolerance * Math.max(1, Math.abs(due / value));
  return near(given, due, scaled) ? 'follows' : 'wrong';
}

function near(given: number, value: number, tolerance: number): boolean {
  return Math.abs(given - value) <= tolerance * (1 + 1e-9);
}

function convert(value: number, from: Unit | undefined, to: Unit | undefined): number {
  if (from === undefined || to === undefined || from === to) return value;
  return fromSi(toSi(value, from), to);
}
