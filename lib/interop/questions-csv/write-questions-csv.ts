import Papa from 'papaparse';
import type { WrittenBody, WrittenQuestion } from '../../questions/written/written-question';
import { guarded } from '../spreadsheet-text';
import { BETWEEN, columns, csvForms } from './columns';

/** What tells a spreadsheet that the file is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The first line of a file of questions. */
export function questionsCsvHead(): string {
  return BYTE_ORDER_MARK + lines([columns]);
}

/**
 * Questions as lines of CSV, one a row; those that a row cannot hold are left out.
 *
 * What a spreadsheet would take for a formula stands behind an apostrophe, which reading takes off again.
 */
export function questionsCsvLines(questions: readonly WrittenQuestion[]): string {
  return lines(questions.filter((question) => !cannotBeRow(question)).map(rowOf));
}

/** Why a row cannot hold a question; undefined where it can. */
export function cannotBeRow({ picture, body }: WrittenQuestion): 'areas' | 'picture' | undefined {
  if (!csvForms.some((form) => form === body.form)) return 'areas';
  return picture && 'picture';
}

function lines(rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return '';
  return `${Papa.unparse(
    rows.map((row) => row.map(guarded)),
    { newline: '\r\n', quotes: true },
  )}\r\n`;
}

function rowOf({ title, stem, topics, difficulty, seconds, explanation, body }: WrittenQuestion): string[] {
  const cells: Record<string, string> = {
    title,
    form: body.form,
    stem,
    topics: topics.join(BETWEEN),
    difficulty: String(difficulty),
    seconds: String(seconds),
    explanation,
    ...bodyCells(body),
  };
  return columns.map((column) => cells[column] ?? '');
}

function bodyCells(body: WrittenBody): Record<string, string> {
  switch (body.form) {
    case 'choice':
    case 'several':
      return {
        ...optionCells(body.options),
        right: [body.right].flat().join(BETWEEN),
        shuffle: body.shuffle ? 'yes' : 'no',
      };
    case 'order':
      return optionCells(body.items);
    case 'numbers':
      return {
        variables: body.variables.map(({ name, from, to, step }) => `${name}=${from}:${to}:${step}`).join(BETWEEN),
        formula: body.formula,
        unit: body.unit ?? '',
        tolerance: String(body.tolerance.amount),
        tolerance_kind: body.tolerance.kind,
        decimals: String(body.decimals),
      };
    case 'point':
      return { rig: body.rig, right: body.right.map(({ what, of }) => `${what}:${of}`).join(BETWEEN) };
    case 'words':
      return {
        most_characters: String(body.most),
        model_answer: body.model,
        guidance: body.guidance,
        points: String(body.steps),
      };
    case 'spot':
      return {};
  }
}

function optionCells(options: readonly { id: string; text: string; because?: string | undefined }[]) {
  return Object.fromEntries(
    options.flatMap(({ id, text, because }, index) => [
      [`option_${index + 1}`, text],
      [`id_${index + 1}`, id],
      [`because_${index + 1}`, because ?? ''],
    ]),
  );
}
