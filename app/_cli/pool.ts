import { poolUses } from '@/lib/competency/pool';
import { explainFailure } from './explain-failure';
import { known, readOptions, UsageError } from './usage-error';

const USAGE = 'npm run -s pool -- --cases NUMBER --questions NUMBER --use practice|assessed';
/** A case takes a second to certify; more than this is more than anybody waits for. */
const MOST = 5000;

/** Fills the pool of tasks that new-hire checks and practice choose from, up to so many. */
async function pool(): Promise<string> {
  const values = readOptions({ cases: { type: 'string' }, questions: { type: 'string' }, use: { type: 'string' } });
  if (values.use === undefined) throw new UsageError(`Nothing to do. ${USAGE}`);
  const use = known(values.use, poolUses, 'use');
  const size = { cases: counted('cases', values.cases), questions: counted('questions', values.questions) };
  // Loaded late, so that wrong settings are answered in plain lines.
  const { fillPool } = await import('../_server/pool/fill');
  const { cases, questions } = await fillPool(use, size, new Date());
  return `${use}: ${cases} cases and ${questions} questions added`;
}

function counted(option: string, text = '0'): number {
  const number = Number(text);
  if (/^\d+$/.test(text) && number <= MOST) return number;
  throw new UsageError(`--${option} takes a whole number up to ${MOST}, not ${text}`);
}

pool().then(
  (line) => console.log(line),
  (error) => {
    if (!(error instanceof UsageError)) return explainFailure(error);
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 2;
  },
);
