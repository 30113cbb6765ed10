import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  decidingAppeal,
  findAppeal,
  listAppealsOf,
  listOpenAppeals,
  makingAppeal,
  withdrawingAppeal,
} from '@/db/queries/appeals';
import { claimThen } from '@/db/together';
import { dueAt } from '@/lib/reviewing/appeal';
import { addHandedIn } from '../support/review-rows';
import { noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await addHandedIn(db);
});

function appeal(id: string, about: { attemptId?: string; sittingId?: string; place?: number }, madeAt = noon) {
  const { attemptId = null, sittingId = null, place = null } = about;
  const note = 'Look again';
  const whose = { organizationId: 'harbour', learnerId: 'lea' };
  return { id, ...whose, attemptId, sittingId, place, note, madeAt, dueAt: new Date(dueAt(madeAt.getTime())) };
}

const make = (...args: Parameters<typeof appeal>) => claimThen(db, makingAppeal(db, appeal(...args)), []);
const decide = (id: string, decidedBy: string, state: 'upheld' | 'declined' = 'declined') =>
  claimThen(db, decidingAppeal(db, { id, state, answer: 'Looked', decidedBy, decidedAt: noon }), []);

test('one appeal at a time is open about the same', async () => {
  expect(await make('one', { attemptId: 'case' })).toBe(true);
  expect(await make('two', { attemptId: 'case' })).toBe(false);
  expect(await make('three', { sittingId: 'questions', place: 1 })).toBe(true);
  expect(await make('four', { sittingId: 'questions', place: 1 })).toBe(false);
  expect(await make('five', { sittingId: 'questions', place: 2 })).toBe(true);
  expect(await decide('one', 'ira')).toBe(true);
  expect(await make('two', { attemptId: 'case' })).toBe(true);
  expect((await listAppealsOf(db, { attemptId: 'case' })).map(({ id }) => id).sort()).toEqual(['one', 'two']);
});

test('an appeal is decided once, and never by who made it', async () => {
  await make('one', { attemptId: 'case' });
  expect(await decide('one', 'lea', 'upheld')).toBe(false);
  expect(await decide('one', 'ira', 'upheld')).toBe(true);
  expect(await decide('one', 'ida', 'declined')).toBe(false);
  expect(await findAppeal(db, 'one')).toMatchObject({ state: 'upheld', answer: 'Looked', decidedBy: 'ira' });
});

test('an appeal is withdrawn by who made it alone, and only while it is open', async () => {
  await make('one', { attemptId: 'case' });
  const withdraw = (learnerId: string) => claimThen(db, withdrawingAppeal(db, { id: 'one', learnerId }), []);
  expect(await withdraw('ira')).toBe(false);
  expect(await withdraw('lea')).toBe(true);
  expect(await withdraw('lea')).toBe(false);
  expect(await decide('one', 'ira')).toBe(false);
});

test('those due first stand first, and nobody’s own', async () => {
  await make('later', { attemptId: 'case' }, new Date(noon.getTime() + 1000));
  await make('sooner', { sittingId: 'questions', place: 1 });
  const open = (deciderId: string, organizationId = 'harbour') =>
    listOpenAppeals(db, { organizationId, deciderId }, 10);
  expect((await open('ira')).map(({ id }) => id)).toEqual(['sooner', 'later']);
  expect(await open('lea')).toEqual([]);
  expect(await open('ira', 'college')).toEqual([]);
});
