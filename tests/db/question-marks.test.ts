import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { listMarked, listMarks, marking } from '@/db/queries/question-marks';
import { listSittings } from '@/db/queries/sittings';
import { manualMarks } from '@/db/schema';
import { claimThen, together } from '@/db/together';
import { makeShopAndCollege } from '../support/shop-rows';
import { aBody, aMark, begin, minutesOn } from '../support/sitting-rows';
import { testDatabase } from '../support/test-database';

const ada = { learnerId: 'ada', organizationId: 'harbour' };
const waiting = { credit: null, score: null, notes: [] };
const ofThree = { ...aBody, steps: 3 };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await begin(db, {}, 3);
});

function giveByHand(seq: number, score: number, comment = '') {
  return db
    .insert(manualMarks)
    .values({ sittingId: 'sitting-a', place: 1, seq, score, comment, markedBy: 'ina', markedAt: minutesOn(20 + seq) });
}

test('a question is marked once, with all that was asked', async () => {
  expect(await claimThen(db, marking(db, aMark()), [])).toBe(true);
  const wrong = { credit: 0, score: 0, notes: [] };
  expect(await claimThen(db, marking(db, aMark({ mark: wrong })), [])).toBe(false);
  expect(await listMarks(db, 'ada', 'sitting-a')).toEqual([{ ...aMark(), manual: null }]);
});

test('a question that nobody answered keeps that nobody did', async () => {
  await together(db, [marking(db, aMark({ answer: null }))]);
  expect((await listMarks(db, 'ada', 'sitting-a'))[0]?.answer).toBeNull();
});

test('nobody reads another learner’s marks', async () => {
  await together(db, [marking(db, aMark())]);
  await giveByHand(1, 1);
  expect(await listMarks(db, 'ben', 'sitting-a')).toEqual([]);
  expect(await listMarked(db, { ...ada, learnerId: 'ben' })).toEqual([]);
});

describe('free text', () => {
  beforeEach(() => together(db, [marking(db, aMark({ asked: ofThree, mark: waiting }))]));

  test('counts nothing before a person has marked it', async () => {
    expect((await listMarks(db, 'ada', 'sitting-a'))[0]).toMatchObject({ mark: waiting, manual: null });
    expect(await listMarked(db, ada)).toEqual([]);
    expect((await listSittings(db, ada, 1))[0]).toMatchObject({ marked: 1, right: 0 });
  });

  test('counts by what a person gave last, as a share of its steps', async () => {
    await giveByHand(1, 3);
    await giveByHand(2, 2, 'The seal is missing.');
    const [mark] = await listMarks(db, 'ada', 'sitting-a');
    expect(mark?.manual).toEqual({ score: 2, comment: 'The seal is missing.' });
    expect((await listMarked(db, ada)).map(({ credit }) => credit)).toEqual([2 / 3]);
    expect((await listSittings(db, ada, 1))[0]).toMatchObject({ right: 0 });
    await giveByHand(3, 3);
    expect((await listSittings(db, ada, 1))[0]).toMatchObject({ right: 1 });
  });
});

test('what was answered and marked comes in the order of its marks, from this organisation alone', async () => {
  await begin(db, { id: 'there', key: 'there', organizationId: 'college' });
  const half = { credit: 0.5, score: 0, notes: [] };
  await together(db, [
    marking(db, aMark({ place: 2, markedAt: minutesOn(9) })),
    marking(db, aMark({ place: 1, mark: half, markedAt: minutesOn(4) })),
    marking(db, aMark({ place: 3, answer: null, markedAt: minutesOn(1) })),
    marking(db, aMark({ sittingId: 'there' })),
  ]);
  const spec = { kind: 'judge', seed: 'maple', topic: 'filtration' };
  expect(await listMarked(db, ada)).toEqual([
    { sittingId: 'sitting-a', spec, writtenId: null, credit: 0.5, markedAt: minutesOn(4) },
    { sittingId: 'sitting-a', spec, writtenId: null, credit: 1, markedAt: minutesOn(9) },
  ]);
});
