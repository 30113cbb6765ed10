import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { marking } from '@/db/queries/question-marks';
import { askingAnew, listSittingQuestions, recordFlag, recordNextQuestion } from '@/db/queries/sitting-questions';
import { handingIn } from '@/db/queries/sittings';
import { together } from '@/db/together';
import { makeShopAndCollege } from '../support/shop-rows';
import { aMark, aPlace, begin, minutesOn } from '../support/sitting-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
});

const asked = () => listSittingQuestions(db, 'ada', 'sitting-a');

test('questions come back by their place, as they were asked, and to nobody else', async () => {
  await begin(db, {}, 2);
  expect(await asked()).toEqual([
    { ...aPlace(), flagged: false },
    { ...aPlace({ place: 2 }), flagged: false },
  ]);
  expect(await listSittingQuestions(db, 'ben', 'sitting-a')).toEqual([]);
});

describe('the next question', () => {
  const next = aPlace({ place: 2, seed: 'oak', spec: { kind: 'read-dial', seed: 'oak' }, askedAt: minutesOn(3) });

  beforeEach(() => begin(db, { mode: 'drill', closesAt: minutesOn(10) }));

  test('is asked once the one before is marked', async () => {
    expect(await recordNextQuestion(db, 'ada', next)).toBeUndefined();
    await together(db, [marking(db, aMark())]);
    expect(await recordNextQuestion(db, 'ada', next)).toEqual({ ...next, flagged: false });
    expect((await asked())[1]).toEqual({ ...next, flagged: false });
  });

  test('of a written question keeps its version and its seed', async () => {
    await together(db, [marking(db, aMark())]);
    expect(await recordNextQuestion(db, 'ada', { ...next, spec: null })).toMatchObject({ spec: null, seed: 'oak' });
  });

  test('is asked once, though two tabs ask', async () => {
    await together(db, [marking(db, aMark())]);
    await recordNextQuestion(db, 'ada', next);
    expect(await recordNextQuestion(db, 'ada', { ...next, seed: 'elm' })).toBeUndefined();
    expect((await asked()).map(({ seed }) => seed)).toEqual(['maple', 'oak']);
  });

  test('is not asked in a sitting that is over, handed in or somebody else’s', async () => {
    await together(db, [marking(db, aMark())]);
    expect(await recordNextQuestion(db, 'ben', next)).toBeUndefined();
    expect(await recordNextQuestion(db, 'ada', { ...next, askedAt: minutesOn(10) })).toBeUndefined();
    await together(db, [handingIn(db, 'ada', { sittingId: 'sitting-a', lastSeq: 0, at: minutesOn(3) })]);
    expect(await recordNextQuestion(db, 'ada', next)).toBeUndefined();
    expect(await asked()).toHaveLength(1);
  });
});

describe('a question that content has changed since', () => {
  const anew = aPlace({
    seed: 'oak',
    spec: { kind: 'judge', seed: 'oak' },
    questionHash: 'def',
    askedAt: minutesOn(4),
  });

  beforeEach(() => begin(db, {}, 2));

  test('gives its place to another, once, and keeps its flag', async () => {
    await recordFlag(db, 'ada', { sittingId: 'sitting-a', place: 1, flagged: true, at: minutesOn(1) });
    await together(db, [askingAnew(db, anew, { questionHash: 'abc' })]);
    await together(db, [askingAnew(db, { ...anew, seed: 'elm' }, { questionHash: 'abc' })]);
    expect(await asked()).toEqual([
      { ...anew, flagged: true },
      { ...aPlace({ place: 2 }), flagged: false },
    ]);
  });

  test('stays where it is marked', async () => {
    await together(db, [marking(db, aMark()), askingAnew(db, anew, { questionHash: 'abc' })]);
    expect((await asked())[0]).toEqual({ ...aPlace(), flagged: false });
  });
});

describe('a flag', () => {
  const flag = { sittingId: 'sitting-a', place: 1, flagged: true, at: minutesOn(2) };

  test('is set and taken again', async () => {
    await begin(db, {}, 2);
    expect(await recordFlag(db, 'ada', flag)).toBe(true);
    expect((await asked()).map(({ flagged }) => flagged)).toEqual([true, false]);
    await recordFlag(db, 'ada', { ...flag, flagged: false });
    expect((await asked()).map(({ flagged }) => flagged)).toEqual([false, false]);
  });

  test('is not set by somebody else, on no question, nor after the end', async () => {
    await begin(db, { closesAt: minutesOn(5) });
    expect(await recordFlag(db, 'ben', flag)).toBe(false);
    expect(await recordFlag(db, 'ada', { ...flag, place: 2 })).toBe(false);
    expect(await recordFlag(db, 'ada', { ...flag, at: minutesOn(5) })).toBe(false);
    await together(db, [handingIn(db, 'ada', { sittingId: 'sitting-a', lastSeq: 0, at: minutesOn(3) })]);
    expect(await recordFlag(db, 'ada', flag)).toBe(false);
    expect((await asked())[0]?.flagged).toBe(false);
  });
});
