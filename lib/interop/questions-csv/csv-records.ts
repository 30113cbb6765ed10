import Papa from 'papaparse';

export interface CsvRecord {
  cells: readonly string[];
  /** On which it begins, counted from 1. */
  line: number;
}

/** The rows of a CSV file with their lines, which are more than the rows where a cell holds several; undefined where its quotes do not match. */
export function csvRecords(text: string): CsvRecord[] | undefined {
  const records: CsvRecord[] = [];
  let [from, line, broken] = [0, 1, false];
  Papa.parse<string[]>(text, {
    delimiter: delimiterOf(text),
    step: ({ data, errors, meta }, parser) => {
      broken ||= errors.some(({ type }) => type === 'Quotes');
      if (broken) return parser.abort();
      records.push({ cells: data, line });
      line += linesIn(text.slice(from, meta.cursor));
      from = meta.cursor;
    },
  });
  return broken ? undefined : records;
}

function linesIn(text: string): number {
  return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}

/** What parts the names of the columns: a spreadsheet writes the one of its country. */
function delimiterOf(text: string): string {
  const [head = ''] = text.split(/\r?\n/, 1);
  const counted = [',', ';', '\t'].map((sign) => ({ sign, times: head.split(sign).length }));
  return counted.sort((a, b) => b.times - a.times)[0]?.sign ?? ',';
}
