import { expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { listActs, recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { aFinding, aNewCall, anAct, anAttempt, aReading } from '../support/attempt-rows';
import { testDatabase } from '../support/test-database';

async function openAttempt(): Promise<Db> {
  const db = testDatabase();
  await recordAttempt(db, anAttempt());
  return db;
}

test('acts come back in order, as they were made', async () => {
  const db = await openAttempt();
  await recordAct(db, 'ada', anAct());
  await recordAct(db, 'ada', anAct({ seq: 2, key: 'act-2', body: aFinding() }));
  const acts = await listActs(db, 'ada', 'attempt-a');
  expect(acts.map(({ seq, kind, body }) => ({ seq, kind, body }))).toEqual([
    { seq: 1, kind: 'reading', body: aReading() },
    { seq: 2, kind: 'finding', body: aFinding() },
  ]);
  expect(acts[0]?.createdAt).toEqual(anAct().createdAt);
});

test('a hint is kept with what it said and why', async () => {
  const db = await openAttempt();
  const hints = [
    {
      kind: 'hint' as const,
      next: { check: 'prime-pressure', condition: 'key-on' as const, instrument: 'dial' },
      why: { settles: 0.31, minutes: 12, areas: ['priming' as const, 'supply-side' as const] },
    },
    { kind: 'hint' as const, next: null, why: null },
  ];
  for (const [index, body] of hints.entries())
    await recordAct(db, 'ada', anAct({ seq: index + 1, key: `hint-${index}`, body }));
  expect((await listActs(db, 'ada', 'attempt-a')).map(({ kind, body }) => ({ kind, body }))).toEqual(
    hints.map((body) => ({ kind: 'hint', body })),
  );
});

test('the same key adds nothing a second time', async () => {
  const db = await openAttempt();
  await recordAct(db, 'ada', anAct());
  expect(await recordAct(db, 'ada', anAct({ seq: 2, body: aFinding() }))).toBeUndefined();
  expect(await listActs(db, 'ada', 'attempt-a')).toHaveLength(1);
});

test('a number that is taken adds nothing, so two tabs cannot decide on the same past', async () => {
  const db = await openAttempt();
  await recordAct(db, 'ada', anAct());
  expect(await recordAct(db, 'ada', anAct({ key: 'act-2' }))).toBeUndefined();
  expect(await listActs(db, 'ada', 'attempt-a')).toHaveLength(1);
});

test('nothing is added after the call', async () => {
  const db = await openAttempt();
  await recordAct(db, 'ada', anAct());
  await recordCall(db, 'ada', aNewCall({ seq: 2 }));
  expect(await recordAct(db, 'ada', anAct({ seq: 2, key: 'act-2' }))).toBeUndefined();
  expect(await recordAct(db, 'ada', anAct({ seq: 3, key: 'act-3' }))).toBeUndefined();
  expect(await listActs(db, 'ada', 'attempt-a')).toHaveLength(1);
});

test('nobody adds to or reads another learner’s attempt', async () => {
  const db = await openAttempt();
  expect(await recordAct(db, 'ben', anAct())).toBeUndefined();
  await recordAct(db, 'ada', anAct());
  expect(await listActs(db, 'ben', 'attempt-a')).toEqual([]);
});

test('nothing is added to an attempt that does not exist', async () => {
  const db = await openAttempt();
  expect(await recordAct(db, 'ada', anAct({ attemptId: 'attempt-b' }))).toBeUndefined();
});
