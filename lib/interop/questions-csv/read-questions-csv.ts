import Papa from 'papaparse';
import { type WrittenQuestion, writtenQuestionSchema } from '../../questions/written/written-question';
import { BETWEEN, type CsvForm, columns, csvForms, MOST_OPTIONS } from './columns';
import { unguarded } from './write-questions-csv';

/** Most rows that are taken at once. */
export const MOST_ROWS = 5000;

/** What a row has wrong: the column, and what was expected there. */
export interface CsvFault {
  column: string;
  expected: string;
}

/** `line` in the file, counted from 1, its head among them. */
export type CsvRow = { line: number; question: WrittenQuestion } | { line: number; title: string; faults: CsvFault[] };

/** Why nothing of a file is taken. */
export type CsvProblem = 'empty' | 'no-columns' | 'columns-twice' | 'too-many-rows' | 'unread';

/** The questions of a CSV file, row by row. */
export function readQuestionsCsv(text: string): { rows: CsvRow[]; problem?: CsvProblem } {
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { delimiter: delimiterOf(text) });
  if (errors.some(({ type }) => type === 'Quotes')) return { rows: [], problem: 'unread' };
  const [head = [], ...body] = data;
  const names = head.map((name) => name.trim().toLowerCase());
  if (names.every((name) => name === '')) return { rows: [], problem: 'empty' };
  if (!names.includes('title') || !names.includes('form')) return { rows: [], problem: 'no-columns' };
  if (columns.some((column) => names.filter((name) => name === column).length > 1))
    return { rows: [], problem: 'columns-twice' };
  const filled = body.map((cells, index) => ({ cells, line: index + 2 })).filter(({ cells }) => cells.some(isFilled));
  if (filled.length === 0) return { rows: [], problem: 'empty' };
  if (filled.length > MOST_ROWS) return { rows: [], problem: 'too-many-rows' };
  return { rows: filled.map(({ cells, line }) => rowOf(new Cells(names, cells), line)) };
}

/** What parts the names of the columns: a spreadsheet writes the one of its country. */
function delimiterOf(text: string): string {
  const [head = ''] = text.split(/\r?\n/, 1);
  const counted = [',', ';', '\t'].map((sign) => ({ sign, times: head.split(sign).length }));
  return counted.sort((a, b) => b.times - a.times)[0]?.sign ?? ',';
}

function isFilled(cell: string): boolean {
  return cell.trim() !== '';
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
    return text === '' ? undefined : Number(text.replace(/^(-?\d+),(\d+)$/, '$1.$2'));
  }

  list(column: string): string[] {
    return this.text(column)
      .split(BETWEEN)
      .map((part) => part.trim())
      .filter((part) => part !== '');
  }
}

function rowOf(cells: Cells, line: number): CsvRow {
  const title = cells.text('title');
  const form = csvForms.find((known) => known === cells.text('form').trim().toLowerCase());
  if (!form) return { line, title, faults: [{ column: 'form', expected: csvForms.join(', ') }] };
  const parsed = writtenQuestionSchema.safeParse(questionOf(cells, form));
  if (parsed.success) return { line, question: parsed.data };
  const faults = parsed.error.issues.map(({ path, message }) => ({ column: columnOf(path, form), expected: message }));
  return { line, title, faults };
}

/** Where an empty cell leaves it open. */
const USUAL = { difficulty: 0, seconds: 60, shuffle: true, decimals: 2, most: 1000, points: 1 };

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
      const shuffle =
        cells.text('shuffle').trim() === '' ? USUAL.shuffle : /^(yes|true|1)$/i.test(cells.text('shuffle').trim());
      return { form, shuffle, options, right: form === 'choice' ? (right.length === 1 ? right[0] : '') : right };
    }
    case 'order':
      return { form, items: optionsOf(cells) };
    case 'numbers':
      return numbersOf(cells);
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

function numbersOf(cells: Cells): unknown {
  const unit = cells.text('unit').trim();
  return {
    form: 'numbers',
    variables: cells.list('variables').map(variableOf),
    formula: cells.text('formula'),
    ...(unit !== '' && { unit }),
    tolerance: {
      kind: cells.text('tolerance_kind').trim() || 'absolute',
      amount: cells.number('tolerance') ?? Number.NaN,
    },
    decimals: cells.number('decimals') ?? USUAL.decimals,
  };
}

/** `before=400:500:10`: from 400 to 500 in steps of 10. */
function variableOf(text: string) {
  const [name = '', range = ''] = text.split('=');
  const [from, to, step] = range.split(':').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  return { name: name.trim(), from, to, step };
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
function columnOf(path: readonly PropertyKey[], form: CsvForm): string {
  const [first, second, third, fourth] = path.map(String);
  if (first !== 'body') return first ?? '';
  if ((second === 'options' || second === 'items') && third !== undefined) {
    const place = Number(third) + 1;
    return fourth === 'id' ? `id_${place}` : fourth === 'because' ? `because_${place}` : `option_${place}`;
  }
  if (second === 'options' || second === 'items') return 'option_1';
  const last = third !== undefined && second === 'tolerance' ? third : (second ?? form);
  return COLUMNS[last] ?? last;
}
