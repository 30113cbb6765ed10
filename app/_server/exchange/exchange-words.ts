import { getTranslations } from 'next-intl/server';
import type { ShownRow } from '@/app/questions/exchange/import-answer';
import type { Refused } from '@/lib/interop/qti/terms';
import { type CsvFault, type CsvProblem, MOST_ROWS } from '@/lib/interop/questions-csv/read-questions-csv';
import { faultTeller } from '../questions/written/fault-words';
import type { Issue } from '../questions/written/parse-draft';
import type { ExchangeRow } from './read-exchange';

/** Longest piece of somebody's file that is quoted back. */
const QUOTED = 80;

/** Why nothing of a file is taken, in a sentence. */
export async function fileRefused(refused: { package: Refused } | { csv: CsvProblem }): Promise<string> {
  const t = await getTranslations('exchange');
  if ('csv' in refused) return t(`csvProblems.${refused.csv}`, { most: MOST_ROWS });
  const { refused: code, file, what, line } = refused.package;
  const where = file === '' ? '' : t('where', { file: quoted(file), line: line ?? 0 });
  return t('refused', { where, why: t(`refusals.${code}`, { what: quoted(what) }) });
}

/** Says of the questions of a file what becomes of each. */
export async function rowTeller(): Promise<(row: ExchangeRow) => ShownRow> {
  const t = await getTranslations('exchange');
  const forms = await getTranslations('written.forms');
  const fault = await faultTeller();
  const inField = (issue: Issue, field: string) => t('inField', { field, fault: fault(issue) });
  const ofCell = (one: CsvFault) =>
    'cells' in one ? t('cells', { count: one.cells }) : inField(one.issue, one.column);
  const whyNot = (row: ExchangeRow): string[] => {
    if ('faults' in row) return row.faults.map(ofCell);
    if (!('refused' in row)) return [];
    const { refused, what, issues = [] } = row;
    if (issues.length > 0) return issues.map((issue) => inField(issue, issue.path.join('.')));
    return [t(`refusals.${refused}`, { what: quoted(what) })];
  };
  return (row) => {
    const place =
      'file' in row ? t('place', { file: quoted(row.file), line: lineOf(row) }) : t('line', { line: lineOf(row) });
    if (!('question' in row)) return { place, title: quoted(row.title ?? ''), says: [...new Set(whyNot(row))] };
    const says = 'warnings' in row ? row.warnings.map((warning) => t(`warnings.${warning}`)) : [];
    return { place, title: quoted(row.question.title), takenAs: forms(row.question.body.form), says };
  };
}

function lineOf(row: ExchangeRow): number {
  return row.line ?? 0;
}

function quoted(text: string): string {
  return text.length > QUOTED ? `${text.slice(0, QUOTED)}…` : text;
}
