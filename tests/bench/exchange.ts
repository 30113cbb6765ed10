import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { packagePieces } from '@/lib/interop/qti/write-package';
import { writtenForms } from '@/lib/questions/written/written-forms';
import type { WrittenQuestion } from '@/lib/questions/written/written-question';
import { aWrittenQuestion } from '../support/written-questions';

const QUESTIONS = 10_000;

export interface ExportFigures {
  seconds: number;
  /** Highest resident memory of a process that exports and does nothing else, and before it began. */
  peakMb: number;
  restMb: number;
  packageMb: number;
}

/** What a package of ten thousand questions of every form costs, in a process of its own. */
export function measureExport(): ExportFigures {
  const told = execFileSync(process.execPath, ['--import', 'tsx', fileURLToPath(import.meta.url), 'export'], {
    encoding: 'utf8',
  });
  return JSON.parse(told) as ExportFigures;
}

const picture = new Uint8Array(40_000).map((_, index) => (index * 2_654_435_761) >>> 13);

/** Each with some text of its own, made when it is asked for, as they come out of a database. */
function* questions(): Generator<{ id: string; question: WrittenQuestion }> {
  for (let n = 0; n < QUESTIONS; n++) {
    const form = writtenForms[n % writtenForms.length] ?? 'choice';
    const question = aWrittenQuestion(form, {
      title: `Question ${n}`,
      explanation: `Because of **${n}**. `.repeat(20),
    });
    if (question.body.form === 'spot') question.body.picture.id = String(n % 100).padStart(20, '0');
    yield { id: n.toString(16).padStart(20, '0'), question };
  }
}

async function exportAll(): Promise<ExportFigures> {
  const [restMb, start] = [megabytes(process.memoryUsage().rss), performance.now()];
  let bytes = 0;
  for await (const piece of packagePieces(questions(), async () => picture)) bytes += piece.length;
  const seconds = (performance.now() - start) / 1000;
  return { seconds, peakMb: process.resourceUsage().maxRSS / 1024, restMb, packageMb: megabytes(bytes) };
}

function megabytes(bytes: number): number {
  return bytes / 2 ** 20;
}

if (process.argv[2] === 'export') console.log(JSON.stringify(await exportAll()));
