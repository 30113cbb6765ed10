import Papa from 'papaparse';
import { FORMULA } from '@/lib/interop/spreadsheet-text';

export type CsvCell = string | number | boolean | null;

/** What tells a spreadsheet that the file is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The first line of a CSV file. */
export function csvHead(columns: readonly string[]): string {
  return BYTE_ORDER_MARK + csvLines([columns]);
}

/** Lines of a CSV file. Texts that a spreadsheet would compute stand behind an apostrophe. */
export function csvLines(rows: readonly (readonly CsvCell[])[]): string {
  if (rows.length === 0) return '';
  const data = rows.map((row) => [...row]);
  return `${Papa.unparse(data, { escapeFormulae: FORMULA, header: false, newline: '\r\n' })}\r\n`;
}
