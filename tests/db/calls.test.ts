import { expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { findCall, recordCall } from '@/db/queries/calls';
import { aCall, aGrade, aNewCall, anAct, anAttempt } from '../support/attempt-rows';
import { testDatabase } from '../support/test-database';

async function openAttempt(): Promise<Db> {
  const db = testDatabase();
  await recordAttempt(db, anAttempt());
  return db;
}

test('a call is stored with its grade', async () => {
  const db = await openAttempt();
  await recordCall(db, 'ada', aNewCall());
  expect(await findCall(db, 'ada', 'attempt-a')).toMatchObject({ seq: 1, body: aCall, grade: aGrade, total: 71 });
});

test('a second call changes nothing', async () => {
  const db = await openAttempt();
  await recordCall(db, 'ada', aNewCall());
  const other = aNewCall({ key: 'call-2', grade: { ...aGrade, total: 100 } });
  expect(await recordCall(db, 'ada', other)).toBeUndefined();
  expect((await findCall(db, 'ada', 'attempt-a'))?.grade.total).toBe(71);
});

test('a call that did not see the last act is refused', async () => {
  const db = await openAttempt();
  await recordAct(db, 'ada', anAct());
  expect(await recordCall(db, 'ada', aNewCall({ seq: 1 }))).toBeUndefined();
  expect(await findCall(db, 'ada', 'attempt-a')).toBeUndefined();
  expect(await recordCall(db, 'ada', aNewCall({ seq: 2 }))).toBeDefined();
});

test('nobody closes or reads another learner’s attempt', async () => {
  const db = await openAttempt();
  expect(await recordCall(db, 'ben', aNewCall())).toBeUndefined();
  await recordCall(db, 'ada', aNewCall());
  expect(await findCall(db, 'ben', 'attempt-a')).toBeUndefined();
});
