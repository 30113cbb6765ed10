import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { countUnmarked } from '@/db/queries/review-work';
import {
  awaitsSecond,
  findAwaitingSecond,
  givingSecondMark,
  listAwaitingSecond,
  listMarkedTwice,
} from '@/db/queries/second-marks';
import { claimThen } from '@/db/together';
import { addHandedIn, markText } from '../support/review-rows';
import { noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

const key = { sittingId: 'questions', place: 1 };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await addHandedIn(db, { secondMarker: true });
});

const give = (markedBy: string, score: number, minute = 5) =>
  claimThen(
    db,
    givingSecondMark(db, {
      ...key,
      score,
      comment: '',
      markedBy,
      markedAt: new Date(noon.getTime() + minute * 60_000),
    }),
    [],
  );
const waiting = async (markerId: string, organizationId = 'harbour') =>
  (await listAwaitingSecond(db, { organizationId, markerId }, 10)).length;

test('the second mark waits for the first, and is another person’s', async () => {
  expect(await waiting('ida')).toBe(0);
  expect(await give('ida', 2)).toBe(false);
  await markText(db, 'ira', 3);
  expect(await waiting('ida')).toBe(1);
  expect(await waiting('ida', 'college')).toBe(0);
  for (const who of ['ira', 'lea']) {
    expect(await waiting(who)).toBe(0);
    expect(await findAwaitingSecond(db, { organizationId: 'harbour', markerId: who }, key)).toBeUndefined();
    expect(await give(who, 2)).toBe(false);
  }
  expect(await give('ida', 2)).toBe(true);
  expect(await give('ida', 1)).toBe(false);
});

test('both marks are told once both are there, the first as it stood then', async () => {
  await markText(db, 'ira', 3);
  expect(await awaitsSecond(db, key)).toBe(true);
  expect(await countUnmarked(db, 'week-one', true)).toBe(1);
  expect(await listMarkedTwice(db, 'week-one')).toEqual([]);
  await give('ida', 1);
  expect(await awaitsSecond(db, key)).toBe(false);
  expect(await countUnmarked(db, 'week-one', true)).toBe(0);
  await markText(db, 'ira', 2, 9);
  expect(await listMarkedTwice(db, 'week-one')).toMatchObject([
    { ...key, learnerId: 'lea', steps: 3, first: 3, second: 1, firstMarker: 'ira', secondMarker: 'ida' },
  ]);
});

test('without being asked for there is no second mark', async () => {
  db = testDatabase();
  await addHandedIn(db);
  expect(await countUnmarked(db, 'week-one', false)).toBe(1);
  await markText(db, 'ira', 3);
  expect(await countUnmarked(db, 'week-one', false)).toBe(0);
  expect(await awaitsSecond(db, key)).toBe(false);
  expect(await give('ida', 2)).toBe(false);
});
