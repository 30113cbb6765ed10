import Papa from 'papaparse';
import type { WrittenBody, WrittenQuestion } from '../../questions/written/written-question';
import { BETWEEN, columns, csvForms } from './columns';

/** A question that a row cannot hold, and why. */
export interface LeftOut {
  id: string;
  title: string;
  because: 'form' | 'picture';
}

/**
 * Questions as CSV, one a row.
 *
 * What a spreadsheet would take for a formula stands behind an apostrophe, which reading takes off again.
 */
export function writeQuestionsCsv(questions: readonly { id: string; question: WrittenQuestion }[]): {
  csv: string;
  left: LeftOut[];
} {
  const left: LeftOut[] = [];
  const rows: string[][] = [];
  for (const { id, question } of questions) {
    const because = question.picture
      ? 'picture'
      : csvForms.some((form) => form === question.body.form)
        ? undefined
        : 'form';
    if (because) left.push({ id, title: question.title, because });
    else rows.push(rowOf(question));
  }
  const table = [[...columns] as string[], ...rows].map((row) => row.map(guarded));
  return { csv: `\uFEFF${Papa.unparse(table, { newline: '\r\n', quotes: true })}\r\n`, left };
}

/** Signs that begin a formula, in whatever width, behind whatever blanks; and the guard itself. */
const GUARDED = /^\s*[=+\-@＝＋－＠']|^[\t\r\n]/;

export function guarded(text: string): string {
  return GUARDED.test(text) ? `'${text}` : text;
}

export function unguarded(text: string): string {
  return text.startsWith("'") && GUARDED.test(text.slice(1)) ? text.slice(1) : text;
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
    case 'words':
      return {
        most_characters: String(body.most),
        model_answer: body.model,
        guidance: body.guidance,
        points: String(body.steps),
      };
    default:
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
