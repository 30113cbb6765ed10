import type { z } from 'zod';
import { type WrittenQuestion, writtenQuestionSchema } from '../../questions/written/written-question';
import { unguarded } from '../spreadsheet-text';
import { BETWEEN, type CsvForm, columns, csvForms, MOST_OPTIONS } from './columns';
import { csvRecords } from './csv-records';

/** Most rows that are taken at once. */
export const MOST_ROWS = 2000;

/** What a row has wrong: more cells than there are columns, or something in a column. */
export type CsvFault = { cells: number } | { column: string; issue: z.core.$ZodIssue };

/** `line` is the one in the file on which the row begins, counted from 1. */
export type CsvRow = { line: number; question: WrittenQuestion } | { line: number; title: string; faults: CsvFault[] };

/** Why nothing of a file is taken. */
export const csvProblems = ['empty', 'no-columns', 'columns-twice', 'too-many-rows', 'unread'] as const;
export type CsvProblem = (typeof csvProblems)[number];

/** The questions of a CSV file, row by row. */
export function readQuestionsCsv(text: string): { rows: CsvRow[] } | { problem: CsvProblem } {
  const records = csvRecords(text.replace(/^\uFEFF/, ''));
  if (!records) return { problem: 'unread' };
  const [head, ...body] = records;
  const names = (head?.cells ?? []).map((name) => name.trim().toLowerCase());
  if (names.every((name) => name === '')) return { problem: 'empty' };
  if (!names.includes('title') || !names.includes('form')) return { problem: 'no-columns' };
  if (columns.some((column) => names.filter((name) => name === column).length > 1)) return { problem: 'columns-twice' };
  const filled = body.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (filled.length === 0) return { problem: 'empty' };
  if (filled.length > MOST_ROWS) return { problem: 'too-many-rows' };
  return { rows: filled.map(({ cells, line }) => rowOf(new Cells(names, cells), line)) };
}

class Cells {
  constructor(
    readonly names: readonly string[],
    readonly cells: readonly string[],
  ) {}

  text(column: string): string {
    const at = this.names.indexOf(column);
    return at < 0 ? '' : unguarded(this.cells[at] ?? '');
  }

  /** Undefined for an empty cell, NaN for what is no number. */
  number(column: string): number | undefined {
    const text = this.text(column).trim();
    return text === '' ? undefined : numberIn(text);
  }

  list(column: string): string[] {
    const parts = this.text(column).split(BETWEEN);
    return parts.map((part) => part.trim()).filter((part) => part !== '');
  }

  isTooLong(): boolean {
    return this.cells.slice(this.names.length).some((cell) => cell.trim() !== '');
  }
}

/** With a point or, as some spreadsheets write it, a comma. */
function numberIn(text: string): number {
  return text.trim() === '' ? Number.NaN : Number(text.replace(/^([+-]?\d+),(\d+)$/, '$1.$2'));
}

function rowOf(cells: Cells, line: number): CsvRow {
  const title = cells.text('title').slice(0, 200);
  const form = csvForms.find((known) => known === cells.text('form').trim().toLowerCase());
  if (!form) return { line, title, faults: [{ column: 'form', issue: noForm }] };
  if (cells.isTooLong()) return { line, title, faults: [{ cells: cells.cells.length }] };
  const parsed = writtenQuestionSchema.safeParse(questionOf(cells, form));
  if (parsed.success) return { line, question: parsed.data };
  return { line, title, faults: faultsOf(parsed.error.issues) };
}

const noForm: z.core.$ZodIssue = {
  code: 'invalid_value',
  values: [...csvForms],
  path: ['body', 'form'],
  message: 'not a form',
};

/** One of each column, since one mistake may be several to the schema. */
function faultsOf(issues: readonly z.core.$ZodIssue[]): CsvFault[] {
  const faults = new Map<string, CsvFault>();
  for (const issue of issues) {
    const column = columnOf(issue.path);
    const isShape = issue.code !== 'custom';
    if (!faults.has(column) || !isShape) faults.set(column, { column, issue });
  }
  return [...faults.values()];
}

/** Where an empty cell leaves it open. */
const USUAL = { difficulty: 0, seconds: 60, decimals: 2, most: 1000, points: 1 };

function questionOf(cells: Cells, form: CsvForm): unknown {
  return {
    title: cells.text('title'),
    stem: cells.text('stem'),
    topics: cells.list('topics'),
    difficulty: cells.number('difficulty') ?? USUAL.difficulty,
    seconds: cells.number('seconds') ?? USUAL.seconds,
    explanation: cells.text('explanation'),
    body: bodyOf(cells, form),
  };
}

function bodyOf(cells: Cells, form: CsvForm): unknown {
  switch (form) {
    case 'choice':
    case 'several': {
      const options = optionsOf(cells);
      const right = cells.list('right').map((name) => idNamed(name, options));
      // More than one would be right by turns.
      const only = right.length > 1 ? cells.text('right') : right[0];
      return { form, shuffle: shuffleIn(cells), options, right: form === 'choice' ? only : right };
    }
    case 'order':
      return { form, items: optionsOf(cells) };
    case 'numbers':
      return numbersOf(cells);
    case 'point':
      return { form, rig: cells.text('rig').trim(), right: cells.list('right').map(targetOf) };
    case 'words':
      return {
        form,
        most: cells.number('most_characters') ?? USUAL.most,
        model: cells.text('model_answer'),
        guidance: cells.text('guidance'),
        steps: cells.number('points') ?? USUAL.points,
      };
  }
}

/** Anything but a word for no; what is neither is left for the schema to refuse. */
function shuffleIn(cells: Cells): unknown {
  const word = cells.text('shuffle').trim().toLowerCase();
  if (['', 'yes', 'true', '1'].includes(word)) return true;
  return ['no', 'false', '0'].includes(word) ? false : word;
}

function numbersOf(cells: Cells): unknown {
  const unit = cells.text('unit').trim();
  return {
    form: 'numbers',
    variables: cells.list('variables').map(variableOf),
    formula: cells.text('formula'),
    ...(unit !== '' && { unit }),
    tolerance: { kind: cells.text('tolerance_kind').trim() || 'absolute', amount: cells.number('tolerance') },
    decimals: cells.number('decimals') ?? USUAL.decimals,
  };
}

/** `before=400:500:10`: from 400 to 500 in steps of 10. */
function variableOf(text: string) {
  const [name = '', range = ''] = text.split('=');
  const [from, to, step] = range.split(':').map(numberIn);
  return { name: name.trim(), from, to, step };
}

/** `element:gear-pump`. */
function targetOf(text: string) {
  const [what, of] = text.split(':').map((part) => part.trim());
  return { what, of };
}

function optionsOf(cells: Cells) {
  const places = Array.from({ length: MOST_OPTIONS }, (_, index) => index + 1);
  return places.flatMap((place) => {
    const text = cells.text(`option_${place}`);
    if (text.trim() === '') return [];
    const because = cells.text(`because_${place}`);
    const id = cells.text(`id_${place}`).trim() || `option-${place}`;
    return [{ id, text, ...(because !== '' && { because }) }];
  });
}

/** An option by its id, or by its place counted from 1. */
function idNamed(name: string, options: readonly { id: string }[]): string {
  if (options.some(({ id }) => id === name)) return name;
  return (/^\d+$/.test(name) ? options[Number(name) - 1]?.id : undefined) ?? name;
}

const COLUMNS: Readonly<Record<string, string>> = {
  most: 'most_characters',
  model: 'model_answer',
  steps: 'points',
  kind: 'tolerance_kind',
  amount: 'tolerance',
};

/** The column that a path of the schema stands for. */
function columnOf([first, second, third, fourth]: readonly PropertyKey[]): string {
  if (first !== 'body') return String(first ?? '');
  if (second === 'options' || second === 'items') {
    const place = typeof third === 'number' ? third + 1 : 1;
    return fourth === 'id' || fourth === 'because' ? `${fourth}_${place}` : `option_${place}`;
  }
  const last = String(second === 'tolerance' ? (third ?? 'amount') : (second ?? 'form'));
  return COLUMNS[last] ?? last;
}
