import { type Answer, type AnswerForm, fitsForm, type NumberPart } from '@/lib/questions/answer';
import { type Unit, unitNames } from '@/lib/units';
import { parseDecimal } from '../parse-decimal';

/** Why a form is no answer; a code of `problems`. */
export type AnswerProblem =
  /** Nothing was chosen or written. */
  | 'answer-missing'
  /** A row or a number was left open. */
  | 'answer-open'
  | 'answer-not-a-number'
  /** A thousand or a fraction. */
  | 'answer-ambiguous'
  | 'answer-unit'
  | 'answer-too-long'
  /** What the page does not send: an id that was not offered, one that stands twice. */
  | 'answer-not-offered';

/** `at`: id of the part or row. `value`: what was typed there. */
export type ParsedAnswer = { answer: Answer } | { problem: AnswerProblem; at?: string; value?: string };

/**
 * The answer that a form holds, by the native fields of its kind: `option`, `options`, `order`, `value.<part>` and
 * `unit.<part>`, `target`, `cell.<row>`, `stretch`, `shape`, `text`.
 *
 * @returns an answer that its form can give.
 */
export function parseAnswer(form: FormData, answerForm: AnswerForm): ParsedAnswer {
  const parsed = read(form, answerForm);
  if ('problem' in parsed || fitsForm(answerForm, parsed.answer)) return parsed;
  return { problem: 'answer-not-offered' };
}

function read(form: FormData, answerForm: AnswerForm): ParsedAnswer {
  switch (answerForm.form) {
    case 'choice':
      return chosen(text(form, 'option'), (option) => ({ form: 'choice', option }));
    case 'several':
      return listed(texts(form, 'options'), (options) => ({ form: 'several', options }));
    case 'order':
      return listed(texts(form, 'order'), (order) => ({ form: 'order', order }));
    case 'numbers':
      return readNumbers(form, answerForm.parts);
    case 'point':
      return chosen(text(form, 'target'), (target) => ({ form: 'point', target }));
    case 'grid':
      return readCells(form, answerForm.rows);
    case 'stretch':
      return chosen(text(form, 'stretch'), (stretch) => ({ form: 'stretch', stretch }));
    case 'spot':
      return chosen(text(form, 'shape'), (shape) => ({ form: 'spot', shape }));
    case 'words':
      return readWords(text(form, 'text'), answerForm.most);
  }
}

/** A field's text; nothing for a file or no field at all. */
function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value : '';
}

function texts(form: FormData, name: string): string[] {
  return form.getAll(name).map((value) => (typeof value === 'string' ? value : ''));
}

function chosen(id: string, answerOf: (id: string) => Answer): ParsedAnswer {
  return id === '' ? { problem: 'answer-missing' } : { answer: answerOf(id) };
}

function listed(ids: string[], answerOf: (ids: string[]) => Answer): ParsedAnswer {
  return ids.length === 0 ? { problem: 'answer-missing' } : { answer: answerOf(ids) };
}

function readNumbers(form: FormData, parts: readonly NumberPart[]): ParsedAnswer {
  const numbers: [string, { value: number; unit?: Unit }][] = [];
  for (const { id, units } of parts) {
    const typed = text(form, `value.${id}`);
    const value = parseDecimal(typed);
    if (value === null) return { problem: 'answer-open', at: id };
    if (typeof value === 'string') return { problem: PROBLEM[value], at: id, value: typed };
    if (units.length === 0) numbers.push([id, { value }]);
    else {
      const unit = readUnit(text(form, `unit.${id}`), units);
      if (!unit) return { problem: 'answer-unit', at: id };
      numbers.push([id, { value, unit }]);
    }
  }
  return { answer: { form: 'numbers', parts: Object.fromEntries(numbers) } };
}

const PROBLEM = { 'value-not-a-number': 'answer-not-a-number', 'value-ambiguous': 'answer-ambiguous' } as const;

/** The only unit need not be sent. */
function readUnit(sent: string, units: readonly Unit[]): Unit | undefined {
  if (sent === '' && units.length === 1) return units[0];
  const unit = unitNames.find((name) => name === sent);
  return unit && units.includes(unit) ? unit : undefined;
}

function readCells(form: FormData, rows: readonly { id: string }[]): ParsedAnswer {
  const cells = rows.map(({ id }) => [id, text(form, `cell.${id}`)] as const);
  const open = cells.find(([, column]) => column === '');
  if (open) return { problem: 'answer-open', at: open[0] };
  return { answer: { form: 'grid', cells: Object.fromEntries(cells) } };
}

function readWords(typed: string, most: number): ParsedAnswer {
  // Forms send line ends as two characters; people type one.
  const words = typed.replaceAll('\r\n', '\n').trim();
  if (words === '') return { problem: 'answer-missing' };
  if (words.length > most) return { problem: 'answer-too-long' };
  return { answer: { form: 'words', text: words } };
}
