import { z } from 'zod';
import { type Unit, unitNames } from '../units';
import type { Figure, Stretch, Target } from './figure';
import type { Line } from './line';

/** Something to choose, to put in order or to judge. Ids tell nothing of the key: `a`, `b`, … in the order shown. */
export interface Option {
  id: string;
  line: Line;
  figure?: Figure;
}

/** A number to be worked out. */
export interface NumberPart {
  id: string;
  line: Line;
  /** Units it may be given in, the expected one first; none for a bare number. */
  units: readonly Unit[];
}

/** An area of a picture, in shares of its width and height. */
export interface Shape {
  id: string;
  line: Line;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** How a question is answered. Holds nothing of the key. */
export type AnswerForm =
  | { form: 'choice'; options: readonly Option[] }
  | { form: 'several'; options: readonly Option[] }
  /** Items as they lie before they are ordered. */
  | { form: 'order'; items: readonly Option[] }
  | { form: 'numbers'; parts: readonly NumberPart[] }
  /** One target on a drawing, in the order in which the keyboard goes through them. `line` says what an eye sees there. */
  | { form: 'point'; rig: string; targets: readonly (Target & { line: Line })[] }
  /** One column for each row. */
  | { form: 'grid'; rows: readonly Option[]; columns: readonly Option[] }
  /** One stretch of the trace that the figure shows. */
  | { form: 'stretch'; stretches: readonly Stretch[] }
  /** One area of a picture. */
  | { form: 'spot'; picture: string; width: number; height: number; alt: string; shapes: readonly Shape[] }
  /** Free text, marked by a person. */
  | { form: 'words'; most: number };

/** A wrong number that people arrive at, and how. */
export interface Slip {
  value: number;
  line: Line;
}

/** The key to one number, in the first unit of its part. */
export interface NumberKey {
  value: number;
  /** Largest distance from the value that still counts. */
  tolerance: number;
  slips: readonly Slip[];
  /** Right by what was answered in an earlier part, though that was wrong. */
  follows?: { part: string; value: (earlier: number) => number };
}

/** What is right, and what is to be said of what is not. Never leaves the server before the answer. */
export type Key =
  /** Any of `right` counts whole. `because` says of an option what speaks against it. */
  | { form: 'choice'; right: readonly string[]; because?: Readonly<Record<string, Line>> }
  | { form: 'several'; right: readonly string[]; because?: Readonly<Record<string, Line>> }
  | { form: 'order'; order: readonly string[] }
  | { form: 'numbers'; parts: Readonly<Record<string, NumberKey>> }
  | { form: 'point'; right: readonly string[] }
  | { form: 'grid'; cells: Readonly<Record<string, string>> }
  | { form: 'stretch'; right: readonly string[] }
  | { form: 'spot'; right: readonly string[] }
  | { form: 'words'; model: string; guidance: string };

const optionId = z.string().min(1).max(80);

/** Longest free text that is taken. */
export const MOST_CHARACTERS = 4000;

/** What a learner answers, as it comes from the browser. Whether its ids exist is for `fitsForm` to say. */
export const answerSchema = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('choice'), option: optionId }),
  z.strictObject({ form: z.literal('several'), options: z.array(optionId).max(40) }),
  z.strictObject({ form: z.literal('order'), order: z.array(optionId).max(40) }),
  z.strictObject({
    form: z.literal('numbers'),
    parts: z.record(optionId, z.strictObject({ value: z.number(), unit: z.enum(unitNames).optional() })),
  }),
  z.strictObject({ form: z.literal('point'), target: optionId }),
  z.strictObject({ form: z.literal('grid'), cells: z.record(optionId, optionId) }),
  z.strictObject({ form: z.literal('stretch'), stretch: optionId }),
  z.strictObject({ form: z.literal('spot'), shape: optionId }),
  z.strictObject({ form: z.literal('words'), text: z.string().max(MOST_CHARACTERS) }),
]);

export type Answer = z.infer<typeof answerSchema>;

/** Whether an answer is one that its form can give: every id there, none twice, nothing left open. */
export function fitsForm(form: AnswerForm, answer: Answer): boolean {
  switch (form.form) {
    case 'choice':
      return answer.form === 'choice' && has(form.options, answer.option);
    case 'several':
      return answer.form === 'several' && isSubset(form.options, answer.options);
    case 'order':
      return answer.form === 'order' && isSubset(form.items, answer.order) && answer.order.length === form.items.length;
    case 'numbers':
      return answer.form === 'numbers' && fillsNumbers(form.parts, answer.parts);
    case 'point':
      return answer.form === 'point' && has(form.targets, answer.target);
    case 'grid':
      return answer.form === 'grid' && fillsGrid(form, answer.cells);
    case 'stretch':
      return answer.form === 'stretch' && has(form.stretches, answer.stretch);
    case 'spot':
      return answer.form === 'spot' && has(form.shapes, answer.shape);
    case 'words':
      return answer.form === 'words' && answer.text.trim() !== '' && answer.text.length <= form.most;
  }
}

function has(items: readonly { id: string }[], id: string): boolean {
  return items.some((item) => item.id === id);
}

function isSubset(items: readonly { id: string }[], ids: readonly string[]): boolean {
  return new Set(ids).size === ids.length && ids.every((id) => has(items, id));
}

function fillsNumbers(parts: readonly NumberPart[], given: Extract<Answer, { form: 'numbers' }>['parts']): boolean {
  if (Object.keys(given).length !== parts.length) return false;
  return parts.every(({ id, units }) => {
    const number = given[id];
    if (!number || !Number.isFinite(number.value)) return false;
    return units.length === 0 ? number.unit === undefined : number.unit !== undefined && units.includes(number.unit);
  });
}

function fillsGrid({ rows, columns }: Extract<AnswerForm, { form: 'grid' }>, cells: Record<string, string>): boolean {
  return Object.keys(cells).length === rows.length && rows.every(({ id }) => has(columns, cells[id] ?? ''));
}
