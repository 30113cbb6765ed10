import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Db } from '@/db/client';
import { listActs } from '@/db/queries/acts';
import type { Case } from '@/lib/cases/case';
import { performCheck } from '@/lib/cases/perform-check';
import { catalogue } from '../support/bench-rig';
import { root } from '../support/server';
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
  const action = actionId('takeReading');
  const times: number[] = [];
  const causes = [...catalogue.causes.keys()];
  for (let attempt = -1; attempt < READINGS / READINGS_EACH; attempt++) {
    const theCase = aCase({ cause: causes[(attempt + 1) % causes.length] ?? '', word: `bench ${attempt}` });
    const id = await openAttempt(db, theCase, `readings${attempt}`);
    const taken = await takeReadings(action, id, theCase);
    const stored = await listActs(db, 'local', id);
    if (stored.length !== READINGS_EACH) throw new Error(`${stored.length} of ${READINGS_EACH} readings were stored`);
    // The first attempt warms the server up.
    if (attempt >= 0) times.push(...taken);
  }
  return { readings: times.length, median: quantile(times, 0.5), p95: quantile(times, 0.95) };
}

async function takeReadings(action: string, attemptId: string, theCase: Case): Promise<number[]> {
  const times: number[] = [];
  for (const [index, hookUp] of hookUps(theCase).entries()) {
    const key = `${attemptId}-${index}`.replace(/[^0-9]/g, '').padStart(32, '0');
    const start = performance.now();
    await post(action, attemptId, { attemptId, key, ...hookUp });
    times.push(performance.now() - start);
  }
  return times;
}

async function post(action: string, attemptId: string, fields: Record<string, string>): Promise<void> {
  const form = new FormData();
  // How a script hands a form to a server action: the form's fields numbered, then the list of arguments.
  for (const [name, value] of Object.entries(fields)) form.set(`_1_${name}`, value);
  form.set('0', '["$K1"]');
  const answer = await fetch(`${origin}/learn/cases/${attemptId}?check=${fields.check}`, {
    method: 'POST',
    headers: { 'Next-Action': action, Accept: 'text/x-component', Origin: origin },
    body: form,
  });
  const text = await answer.text();
  if (!answer.ok || !text.includes('{"done":true}')) throw new Error(`A reading was refused: ${text.slice(0, 300)}`);
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

/** The address that the build gave a server action. */
function actionId(name: string): string {
  const manifest = JSON.parse(readFileSync(join(root, '.next/server/server-reference-manifest.json'), 'utf8'));
  const actions = Object.entries<{ exportedName?: string }>(manifest.node);
  const found = actions.find(([, { exportedName }]) => exportedName === name);
  if (!found) throw new Error(`The build has no server action ${name}`);
  return found[0];
}
