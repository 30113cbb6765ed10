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
/** What each of those sends, one after the other, so that there are always as many on their way. */
const READINGS = [
  { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' },
  { check: 'air-in-fuel', condition: 'key-on', instrument: 'clear-hose' },
];
/** These are a step ahead of the others, so that some second readings are answered before the server is killed. */
const AHEAD = 10;
/**
 * Answers heard when the server is killed. No more than this are on their second reading then, so that there is always work on
 * its way, however late the answers are heard.
 */
const KILLED_AFTER = SUBMISSIONS - 50;

const place = placeFor(3135);
const origin = `http://127.0.0.1:${place.port}`;

interface Submission {
  attemptId: string;
  /** Of each of its readings. */
  keys: readonly string[];
}

test('a server killed under 200 submissions at once keeps every act that it acknowledged, and none twice', async () => {
  await freshData(place);
  const db = openPlace(place);
  const submissions = await openAttempts(db);
  const caller = { origin, cookie: await newSession(db, people.learner.id) };
  let server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
  try {
    await untilUp(place);
    const acknowledged = new Map<string, number>(submissions.map(({ attemptId }) => [attemptId, 0]));
    let answers = 0;
    const gone = once(server, 'exit');
    const read = async (submission: Submission, which: number) => {
      const done = await submit(caller, submission, which).catch(() => false);
      if (!done) return false;
      acknowledged.set(submission.attemptId, which + 1);
      if (++answers === KILLED_AFTER) server.kill('SIGKILL');
      return true;
    };
    await Promise.all(submissions.slice(0, AHEAD).map((submission) => read(submission, 0)));
    const sent = submissions.map(async (submission, n) => {
      if (n < AHEAD || (await read(submission, 0))) await read(submission, 1);
    });
    await Promise.all(sent);
    await gone;
    expect(answers).toBeGreaterThanOrEqual(KILLED_AFTER);
    expect(answers).toBeLessThan(SUBMISSIONS * READINGS.length);

    server = startServer(place, { FAULTWRIGHT_LOG: 'silent' });
    await untilUp(place);
    const kept = await storedKeys(db);
    for (const { attemptId, keys } of submissions) {
      const stored = kept.get(attemptId) ?? [];
      expect(stored.length).toBeGreaterThanOrEqual(acknowledged.get(attemptId) ?? 0);
      expect(stored).toEqual(keys.slice(0, stored.length));
    }
    // Whoever heard nothing sends it again, as the page does: with the same key.
    for (const submission of submissions)
      for (const which of READINGS.keys())
        if (which >= (acknowledged.get(submission.attemptId) ?? 0))
          expect(await submit(caller, submission, which)).toBe(true);
    const all = await storedKeys(db);
    for (const { attemptId, keys } of submissions) expect(all.get(attemptId)).toEqual(keys);
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
    return { attemptId: id, keys: READINGS.map((_, which) => `c4a${which}${n.toString(16).padStart(28, '0')}`) };
  });
  for (const { attemptId } of submissions)
    await recordAttempt(db, anAttempt({ id: attemptId, key: attemptId, ...owner, ...theCase }));
  return submissions;
}

async function submit(caller: Caller, { attemptId, keys }: Submission, which: number): Promise<boolean> {
  const fields = { attemptId, key: keys[which] ?? '', ...READINGS[which] };
  const { text } = await callAction(caller, `/learn/cases/${attemptId}`, 'takeReading', fields);
  return text.includes('{"done":true}');
}

/** The keys of each attempt's acts, by their numbers, which count from 1 without gaps. */
async function storedKeys(db: Db): Promise<Map<string, string[]>> {
  const stored = new Map<string, string[]>();
  for (const { attemptId, seq, key } of await db.select().from(acts).orderBy(acts.attemptId, acts.seq)) {
    const keys = [...(stored.get(attemptId) ?? []), key];
    expect(seq).toBe(keys.length);
    stored.set(attemptId, keys);
  }
  return stored;
}
