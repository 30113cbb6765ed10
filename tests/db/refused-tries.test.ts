import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { clearingRefusedTries, findRefusedTries, type RefusedTries, recordTry } from '@/db/queries/refused-tries';
import { together } from '@/db/together';
import { testDatabase } from '../support/test-database';

const seconds = (n: number) => new Date(Date.UTC(2026, 0, 1, 12, 0, n));
const now = seconds(0);

function tried(count: number, changes: Partial<RefusedTries> = {}): RefusedTries {
  return { key: 'kit', count, waitUntil: now, ...changes };
}

let db: Db;

beforeEach(() => {
  db = testDatabase();
});

test('what was never refused is not there', async () => {
  expect(await findRefusedTries(db, 'kit')).toBeUndefined();
});

test('tries are counted one after another, each name for itself', async () => {
  expect(await recordTry(db, undefined, tried(1), now)).toBe(true);
  expect(await recordTry(db, undefined, tried(1, { key: 'lea' }), now)).toBe(true);
  expect(await recordTry(db, tried(1), tried(2, { waitUntil: seconds(30) }), now)).toBe(true);
  expect(await findRefusedTries(db, 'kit')).toEqual(tried(2, { waitUntil: seconds(30) }));
  expect((await findRefusedTries(db, 'lea'))?.count).toBe(1);
});

test('of many first tries at once, one is let through', async () => {
  const through = await Promise.all([1, 2, 3].map(() => recordTry(db, undefined, tried(1), now)));
  expect(through.filter(Boolean)).toHaveLength(1);
  expect((await findRefusedTries(db, 'kit'))?.count).toBe(1);
});

test('of many further tries that saw the same count, one is let through', async () => {
  await recordTry(db, undefined, tried(1), now);
  const through = await Promise.all([1, 2, 3].map(() => recordTry(db, tried(1), tried(2), now)));
  expect(through.filter(Boolean)).toHaveLength(1);
  expect((await findRefusedTries(db, 'kit'))?.count).toBe(2);
});

test('a try before the waiting is over is not let through and lengthens nothing', async () => {
  const waiting = tried(5, { waitUntil: seconds(30) });
  await recordTry(db, undefined, waiting, now);
  expect(await recordTry(db, waiting, tried(6, { waitUntil: seconds(90) }), seconds(29))).toBe(false);
  expect(await findRefusedTries(db, 'kit')).toEqual(waiting);
  expect(await recordTry(db, waiting, tried(6, { waitUntil: seconds(90) }), seconds(30))).toBe(true);
});

test('a try that was right is forgotten, and others’ are not', async () => {
  await recordTry(db, undefined, tried(4), now);
  await recordTry(db, undefined, tried(4, { key: 'lea' }), now);
  await together(db, [clearingRefusedTries(db, 'kit')]);
  expect(await findRefusedTries(db, 'kit')).toBeUndefined();
  expect((await findRefusedTries(db, 'lea'))?.count).toBe(4);
});
