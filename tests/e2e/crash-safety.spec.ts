import { once } from 'node:events';
import { expect, test } from '@playwright/test';
import { sql } from 'drizzle-orm';
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { acts } from '@/db/schema';
import { anAttempt } from '../support/attempt-rows';
import { type Caller, callAction } from '../support/call-action';
import { codeOf, storedCase } from '../support/case-codes';
import { harbour, newSession, people } from '../support/people';
import { freshData, openPlace, placeFor, startServer, untilUp } from '../support/server';

const SUBMISSIONS = 200;
/** Answers after which the server is killed: some are in, most are on their way. */
const KILLED_AFTER = 40;

const place = placeFor(3135);
const origin = `http://127.0.0.1:${place.port}`;

interface Submission {
  attemptId: string;
  key: string;
}

test('a server killed under 200 submissions at once keeps every act that it acknowledged, and none twice', async () => {
  await freshData(place);
  const db = openPlace(place);
  const submissions = await openAttempts(db);
  const caller = { origin, cookie: await newSession(db, people.learner.id) };
  let server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  try {
    await untilUp(place);
    const acknowledged: Submission[] = [];
    const gone = once(server, 'exit');
    const sent = submissions.map(async (submission) => {
      const done = await submit(caller, submission).catch(() => false);
      if (done) acknowledged.push(submission);
      if (acknowledged.length === KILLED_AFTER) server.kill('SIGKILL');
    });
    await Promise.all(sent);
    await gone;
    expect(acknowledged.length).toBeGreaterThanOrEqual(KILLED_AFTER);
    expect(acknowledged.length).toBeLessThan(SUBMISSIONS);

    server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
    await untilUp(place);
    const kept = await storedActs(db);
    for (const { attemptId, key } of acknowledged) expect(kept.get(attemptId)).toEqual([{ seq: 1, key }]);

    // Whoever heard nothing sends it again, as the page does: with the same key.
    for (const submission of submissions) expect(await submit(caller, submission)).toBe(true);
    const all = await storedActs(db);
    expect(all.size).toBe(SUBMISSIONS);
    for (const { attemptId, key } of submissions) expect(all.get(attemptId)).toEqual([{ seq: 1, key }]);
    expect(await db.all(sql`PRAGMA integrity_check`)).toEqual([{ integrity_check: 'ok' }]);
  } finally {
    server.kill('SIGKILL');
  }
});

async function openAttempts(db: Db): Promise<Submission[]> {
  const theCase = storedCase(codeOf('lift-pump-weak', 800));
  const owner = { learnerId: people.learner.id, organizationId: harbour.id };
  const submissions = Array.from({ length: SUBMISSIONS }, (_, n) => {
    const id = n.toString(16).padStart(20, '0');
    return { attemptId: id, key: `c4a5${n.toString(16).padStart(28, '0')}` };
  });
  for (const { attemptId } of submissions)
    await recordAttempt(db, anAttempt({ id: attemptId, key: attemptId, ...owner, ...theCase }));
  return submissions;
}

async function submit(caller: Caller, { attemptId, key }: Submission): Promise<boolean> {
  const reading = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };
  const { text } = await callAction(caller, `/learn/cases/${attemptId}`, 'takeReading', { attemptId, key, ...reading });
  return text.includes('{"done":true}');
}

async function storedActs(db: Db): Promise<Map<string, { seq: number; key: string }[]>> {
  const stored = new Map<string, { seq: number; key: string }[]>();
  for (const { attemptId, seq, key } of await db.select().from(acts))
    stored.set(attemptId, [...(stored.get(attemptId) ?? []), { seq, key }]);
  return stored;
}
