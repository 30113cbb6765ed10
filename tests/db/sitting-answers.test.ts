import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { marking } from '@/db/queries/question-marks';
import { answering, listSittingAnswers } from '@/db/queries/sitting-answers';
import { askingAnew } from '@/db/queries/sitting-questions';
import { handingIn } from '@/db/queries/sittings';
import { claimThen, together } from '@/db/together';
import { makeShopAndCollege } from '../support/shop-rows';
import { aMark, anAnswer, aPlace, begin, minutesOn } from '../support/sitting-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await begin(db, { closesAt: minutesOn(10) }, 2);
});

const answer = (changes: Parameters<typeof anAnswer>[0] = {}, who = 'ada') =>
  claimThen(db, answering(db, who, anAnswer(changes)), []);
const answers = () => listSittingAnswers(db, 'ada', 'sitting-a');

test('answers come back in order, each with its place and body, and none is changed by a later one', async () => {
  expect(await answer()).toBe(true);
  expect(await answer({ key: 'answer-2', place: 2, body: { form: 'choice', option: 'b' } })).toBe(true);
  expect(await answer({ key: 'answer-3', body: { form: 'choice', option: 'c' }, answeredAt: minutesOn(2) })).toBe(true);
  expect((await answers()).map(({ seq, place, key, body }) => [seq, place, key, body])).toEqual([
    [1, 1, 'answer-1', { form: 'choice', option: 'a' }],
    [2, 2, 'answer-2', { form: 'choice', option: 'b' }],
    [3, 1, 'answer-3', { form: 'choice', option: 'c' }],
  ]);
  expect((await answers())[2]?.answeredAt).toEqual(minutesOn(2));
});

test('the same key answers once', async () => {
  await answer();
  expect(await answer({ body: { form: 'choice', option: 'b' } })).toBe(false);
  expect(await answers()).toHaveLength(1);
});

test('nobody answers or reads in another learner’s sitting', async () => {
  expect(await answer({}, 'ben')).toBe(false);
  await answer();
  expect(await listSittingAnswers(db, 'ben', 'sitting-a')).toEqual([]);
});

test('a question that is not asked is not answered, nor a sitting that is not there', async () => {
  expect(await answer({ place: 3 })).toBe(false);
  expect(await answer({ sittingId: 'sitting-b' })).toBe(false);
  expect(await answers()).toEqual([]);
});

test('an answer counts that was on its way when the time ran out, and none after that', async () => {
  expect(await answer({ answeredAt: minutesOn(10.2), openAt: minutesOn(9.95) })).toBe(true);
  expect(await answer({ key: 'late', answeredAt: minutesOn(10.3), openAt: minutesOn(10) })).toBe(false);
});

test('nothing is answered after the sitting is handed in', async () => {
  await together(db, [handingIn(db, 'ada', { sittingId: 'sitting-a', lastSeq: 0, at: minutesOn(1) })]);
  expect(await answer()).toBe(false);
});

test('a question that is marked takes no other answer', async () => {
  await together(db, [marking(db, aMark())]);
  expect(await answer()).toBe(false);
  expect(await answer({ place: 2 })).toBe(true);
});

test('an answer to a question that was replaced meanwhile does not count for the other', async () => {
  const anew = aPlace({ seed: 'oak', questionHash: 'def', askedAt: minutesOn(4) });
  await together(db, [askingAnew(db, anew, { questionHash: 'abc' })]);
  expect(await answer({ answeredAt: minutesOn(5) })).toBe(false);
  expect(await answer({ answeredAt: minutesOn(5), askedAt: minutesOn(4) })).toBe(true);
});
