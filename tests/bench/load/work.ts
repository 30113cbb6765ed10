import { callAction } from '../../support/call-action';
import type { LoadLearner } from './learners';

/** What came of one request. */
export interface Answered {
  kind: 'reading' | 'verdict';
  /** From sending to the last byte of the answer. */
  ms: number;
  /** What was wrong; undefined when nothing was. */
  error?: string;
}

export interface Shift {
  seconds: number;
  /** Mean seconds between one answer and the next act of a learner. */
  pause: number;
}

/** Every learner takes a reading, writes a verdict, takes the next, until time is up. */
export async function work(learners: readonly LoadLearner[], { seconds, pause }: Shift): Promise<Answered[]> {
  const ends = performance.now() + seconds * 1000;
  const answered: Answered[] = [];
  await Promise.all(learners.map((learner, n) => workOne(learner, n, { ends, pause, answered })));
  return answered;
}

interface Running {
  ends: number;
  pause: number;
  answered: Answered[];
}

async function workOne({ caller, attempts }: LoadLearner, n: number, { ends, pause, answered }: Running) {
  let act = 0;
  // Nobody starts on the same second as all others.
  await rest(pause * spread(n));
  for (const { id, readings } of attempts)
    for (const [index, { hookUp, finding }] of readings.slice(0, READINGS_EACH).entries()) {
      const path = `/learn/cases/${id}?check=${hookUp.check}`;
      const sent = [
        { kind: 'reading' as const, name: 'takeReading', fields: { ...hookUp } },
        { kind: 'verdict' as const, name: 'writeFinding', fields: { ...finding, reading: String(1 + 2 * index) } },
      ];
      for (const { kind, name, fields } of sent) {
        if (performance.now() > ends) return;
        const start = performance.now();
        const key = `${n.toString(16)}-${act++}`.padStart(16, '0');
        const error = await callAction(caller, path, name, { ...fields, attemptId: id, key }).then(
          ({ status, text }) => (text.includes('{"done":true}') ? undefined : `${status} ${text.slice(0, 200)}`),
          (thrown: unknown) => String(thrown),
        );
        answered.push({ kind, ms: performance.now() - start, ...(error && { error }) });
        await rest(pause * 2 * spread(n * 131 + act));
      }
    }
}

/** As many as a learner takes in one case. */
const READINGS_EACH = 10;

/** Spread evenly over 0…1, the same in every run. */
function spread(n: number): number {
  return (n * 0.618_033_988_75) % 1;
}

function rest(seconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, seconds * 1000));
}
