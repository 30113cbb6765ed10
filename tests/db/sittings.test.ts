import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { marking } from '@/db/queries/question-marks';
import { answering } from '@/db/queries/sitting-answers';
import {
  addingSitting,
  countSittings,
  findSitting,
  findSittingByKey,
  findSittingWork,
  handingIn,
  listOverdue,
  listSittings,
} from '@/db/queries/sittings';
import { claimThen, together } from '@/db/together';
import { makeShopAndCollege } from '../support/shop-rows';
import { aMark, anAnswer, aSitting, begin, minutesOn } from '../support/sitting-rows';
import { testDatabase } from '../support/test-database';

const ada = { learnerId: 'ada', organizationId: 'harbour' };
const ben = { learnerId: 'ben', organizationId: 'harbour' };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
});

test('a sitting is found by its learner and by the key that started it, with its topics', async () => {
  await begin(db, { topics: ['filtration', 'fuel-quality'], closesAt: minutesOn(20) });
  const found = await findSitting(db, 'ada', 'sitting-a');
  expect(found).toMatchObject({ topics: ['filtration', 'fuel-quality'], closesAt: minutesOn(20), handedInAt: null });
  expect(await findSittingByKey(db, 'ada', 'start-a')).toEqual(found);
});

test('a key starts one sitting of a learner’s, and the same key another of somebody else’s', async () => {
  await begin(db);
  expect(await claimThen(db, addingSitting(db, aSitting({ id: 'again' })), [])).toBe(false);
  expect(await findSitting(db, 'ada', 'again')).toBeUndefined();
  expect(await claimThen(db, addingSitting(db, aSitting({ id: 'of-ben', learnerId: 'ben' })), [])).toBe(true);
});

test('nobody finds, lists or hands in what is another learner’s', async () => {
  await begin(db);
  expect(await findSitting(db, 'ben', 'sitting-a')).toBeUndefined();
  expect(await findSittingByKey(db, 'ben', 'start-a')).toBeUndefined();
  expect(await listSittings(db, ben, 10)).toEqual([]);
  expect(await countSittings(db, ben)).toBe(0);
  const handIn = handingIn(db, 'ben', { sittingId: 'sitting-a', lastSeq: 0, at: minutesOn(3) });
  expect(await claimThen(db, handIn, [])).toBe(false);
  expect((await findSitting(db, 'ada', 'sitting-a'))?.handedInAt).toBeNull();
});

test('a door is told whose a sitting is, and of none that is not there', async () => {
  await begin(db);
  expect(await findSittingWork(db, 'sitting-a')).toEqual(ada);
  expect(await findSittingWork(db, 'sitting-b')).toBeUndefined();
});

test('work in another organisation is not listed here', async () => {
  await begin(db, { organizationId: 'college' });
  expect(await listSittings(db, ada, 10)).toEqual([]);
  expect(await listSittings(db, { ...ada, organizationId: 'college' }, 10)).toHaveLength(1);
});

test('the list is newest first, no longer than asked for, and counts what was asked, marked and wholly right', async () => {
  await begin(db, {}, 3);
  await begin(db, { id: 'later', key: 'later', createdAt: minutesOn(5) });
  const half = { credit: 0.5, score: 1, notes: [] };
  await together(db, [marking(db, aMark()), marking(db, aMark({ place: 2, mark: half }))]);
  const lines = await listSittings(db, ada, 10);
  expect(lines.map(({ id, questions, marked, right }) => [id, questions, marked, right])).toEqual([
    ['later', 1, 0, 0],
    ['sitting-a', 3, 2, 1],
  ]);
  expect((await listSittings(db, ada, 1)).map(({ id }) => id)).toEqual(['later']);
});

describe('handing in', () => {
  const handIn = (lastSeq: number) => handingIn(db, 'ada', { sittingId: 'sitting-a', lastSeq, at: minutesOn(3) });

  test('happens once', async () => {
    await begin(db);
    expect(await claimThen(db, handIn(0), [])).toBe(true);
    expect(await claimThen(db, handIn(0), [])).toBe(false);
    expect((await findSitting(db, 'ada', 'sitting-a'))?.handedInAt).toEqual(minutesOn(3));
  });

  test('waits until every answer has been looked at', async () => {
    await begin(db);
    await together(db, [answering(db, 'ada', anAnswer())]);
    expect(await claimThen(db, handIn(0), [])).toBe(false);
    expect(await claimThen(db, handIn(1), [])).toBe(true);
  });
});

test('what ran out of time is listed until it is handed in, and nothing that has no limit', async () => {
  await begin(db, { closesAt: minutesOn(10) });
  await begin(db, { id: 'endless', key: 'endless' });
  await begin(db, { id: 'of-ben', learnerId: 'ben', closesAt: minutesOn(10) });
  expect(await listOverdue(db, ada, minutesOn(9))).toEqual([]);
  expect((await listOverdue(db, ada, minutesOn(10))).map(({ id }) => id)).toEqual(['sitting-a']);
  await together(db, [handingIn(db, 'ada', { sittingId: 'sitting-a', lastSeq: 0, at: minutesOn(10) })]);
  expect(await listOverdue(db, ada, minutesOn(11))).toEqual([]);
});
