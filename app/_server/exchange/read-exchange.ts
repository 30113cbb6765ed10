import { setImmediate } from 'node:timers/promises';
import { textOf } from '@/app/people/import/read-list';
import { type RefusedItem, readPackage, type TakenItem, type TakePicture } from '@/lib/interop/qti/read-package';
import type { Refused } from '@/lib/interop/qti/terms';
import { type CsvFault, type CsvProblem, readQuestionsCsv } from '@/lib/interop/questions-csv/read-questions-csv';
import { unknownIn } from '@/lib/questions/written/unknown-in';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { catalogue } from '../catalogue';
import { type MadePicture, readPicture } from '../pictures/read-picture';
import { issueOf } from '../questions/written/parse-draft';
import { randomId } from '../random-id';

/** One question of a file: what it is taken as, or why it is not. */
export type ExchangeRow = { line?: number } & (
  | TakenItem
  | RefusedItem
  | { question: WrittenQuestion }
  | { title: string; faults: readonly CsvFault[] }
);

/** A file, read. Nothing of it is stored. */
export interface ReadExchange {
  format: 'qti' | 'csv';
  rows: ExchangeRow[];
  /** Drawn anew, by the ids that the questions name. */
  pictures: ReadonlyMap<string, MadePicture>;
}

/** Pictures of one package that are drawn anew; more are not taken, since each takes its time. */
const MOST_PICTURES = 300;

/** The questions of a package or of a CSV file, by what its bytes are; or why nothing of it is taken. */
export async function readExchange(
  bytes: Uint8Array,
  topic: string,
): Promise<ReadExchange | { package: Refused } | { csv: CsvProblem }> {
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  return isZip ? readQti(bytes, topic) : readCsv(bytes);
}

async function readQti(bytes: Uint8Array, topic: string): Promise<ReadExchange | { package: Refused }> {
  const pictures = new Map<string, MadePicture>();
  const takePicture: TakePicture = async (picture) => {
    if (pictures.size === MOST_PICTURES) return undefined;
    const made = await readPicture(picture);
    if (typeof made === 'string') return undefined;
    const id = randomId();
    pictures.set(id, made);
    return { id, width: made.width, height: made.height };
  };
  const topics = new Set(catalogue().topics.keys());
  const read = await readPackage(bytes, { topic, topics, takePicture, pause: async () => setImmediate() });
  if ('refused' in read) return { package: read };
  return { format: 'qti', rows: read.items.map(known), pictures };
}

function readCsv(bytes: Uint8Array): ReadExchange | { csv: CsvProblem } {
  const read = readQuestionsCsv(textOf(bytes));
  if ('problem' in read) return { csv: read.problem };
  return { format: 'csv', rows: read.rows.map(known), pictures: new Map() };
}

/** A question about what content does not have is not taken. */
function known(row: ExchangeRow): ExchangeRow {
  if (!('question' in row)) return row;
  const issues = unknownIn(row.question, catalogue()).map(issueOf);
  if (issues.length === 0) return row;
  const { title } = row.question;
  if ('file' in row) return { refused: 'not-valid', file: row.file, what: '', title, issues };
  const faults = issues.map((issue) => ({
    column: issue.path[0] === 'topics' ? 'topics' : String(issue.path[1]),
    issue,
  }));
  return { ...(row.line !== undefined && { line: row.line }), title, faults };
}
