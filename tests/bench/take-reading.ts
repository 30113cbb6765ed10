import type { Db } from '@/db/client';
import { listActs } from '@/db/queries/acts';
import type { Case } from '@/lib/cases/case';
import { performCheck } from '@/lib/cases/perform-check';
import { catalogue } from '../support/bench-rig';
import { type Caller, callAction } from '../support/call-action';
import { newSession, people } from '../support/people';
import { aCase } from '../support/worked-attempt';
import { openAttempt, origin } from './case-server';
import { quantile } from './spread';

const READINGS = 200;
/** About as many as a learner takes in one case. */
const READINGS_EACH = 10;

export interface TakeReadingFigures {
  readings: number;
  /** Milliseconds from sending a reading's form to the last byte of the page's answer, on one connection. */
  median: number;
  p95: number;
}

/** Takes readings as the page's script does: the act is posted with a fresh key, and the page comes back with it. */
export async function measureTakeReading(db: Db): Promise<TakeReadingFigures> {
  const caller = { origin, cookie: await newSession(db, people.learner.id) };
  const times: number[] = [];
  const causes = [...catalogue.causes.keys()];
  for (let attempt = -1; attempt < READINGS / READINGS_EACH; attempt++) {
    const theCase = aCase({ cause: causes[(attempt + 1) % causes.length] ?? '', word: `bench ${attempt}` });
    const id = await openAttempt(db, theCase, `readings${attempt}`);
    const taken = await takeReadings(caller, id, theCase);
    const stored = await listActs(db, people.learner.id, id);
    if (stored.length !== READINGS_EACH) throw new Error(`${stored.length} of ${READINGS_EACH} readings were stored`);
    // The first attempt warms the server up.
    if (attempt >= 0) times.push(...taken);
  }
  return { readings: times.length, median: quantile(times, 0.5), p95: quantile(times, 0.95) };
}

async function takeReadings(caller: Caller, attemptId: string, theCase: Case): Promise<number[]> {
  const times: number[] = [];
  for (const [index, hookUp] of hookUps(theCase).entries()) {
    const key = `${attemptId}-${index}`.replace(/[^0-9]/g, '').padStart(32, '0');
    const start = performance.now();
    await post(caller, attemptId, { attemptId, key, ...hookUp });
    times.push(performance.now() - start);
  }
  return times;
}

async function post(caller: Caller, attemptId: string, fields: Record<string, string>): Promise<void> {
  const { text } = await callAction(caller, `/learn/cases/${attemptId}?check=${fields.check}`, 'takeReading', fields);
  if (!text.includes('{"done":true}')) throw new Error(`A reading was refused: ${text.slice(0, 300)}`);
}

/** Different checks in turn, each with an instrument that survives it. */
function hookUps(theCase: Case): { check: string; condition: string; instrument: string }[] {
  const all = [...catalogue.checks.values()].flatMap(({ id, conditions, instruments }) =>
    conditions.flatMap((condition) => instruments.map((instrument) => ({ check: id, condition, instrument }))),
  );
  const possible = all.filter((hookUp) => {
    const read = performCheck(theCase, catalogue, hookUp);
    return 'shown' in read && read.shown.every(({ kind }) => kind !== 'destroyed');
  });
  return Array.from({ length: READINGS_EACH }, (_, index) => possible[(index * 7) % possible.length]).filter(
    (hookUp) => hookUp !== undefined,
  );
}
