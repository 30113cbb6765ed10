import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { addingComment, listComments } from '@/db/queries/comments';
import { givingPoints, listOverridesOf } from '@/db/queries/overrides';
import {
  findReviewedAttempt,
  findReviewedSitting,
  isAtCase,
  listFinishedAttempts,
  listTurnsHandedIn,
} from '@/db/queries/review-work';
import { turnResults } from '@/db/schema';
import { together } from '@/db/together';
import { aNewCall, anAttempt } from '../support/attempt-rows';
import { addHandedIn } from '../support/review-rows';
import { noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await addHandedIn(db);
});

const asked = (reviewerId: string, more = {}) => ({ organizationId: 'harbour', reviewerId, ...more });
const writing = (about: { attemptId?: string; sittingId?: string; place?: number }, id = 'comment') =>
  addingComment(db, { id, ...about, text: 'Well seen', writtenBy: 'ira', writtenAt: noon });

test('work is known with its turn and assignment', async () => {
  expect(await findReviewedAttempt(db, 'case')).toMatchObject({
    learnerId: 'lea',
    finishedAt: noon,
    turn: { id: 'turn' },
    assignment: { id: 'week-one' },
  });
  expect(await findReviewedSitting(db, 'questions')).toMatchObject({ learnerId: 'lea', turn: { id: 'turn' } });
  expect(await findReviewedAttempt(db, 'questions')).toBeUndefined();
  expect(await findReviewedSitting(db, 'case')).toBeUndefined();
});

test('turns that are handed in are there for others than the learner, until somebody has looked', async () => {
  const turnsFor = async (reviewerId: string, more = {}) =>
    (await listTurnsHandedIn(db, asked(reviewerId, more), 10)).map(({ turn, seen }) => [turn.id, seen]);
  expect(await turnsFor('ira')).toEqual([['turn', false]]);
  expect(await turnsFor('lea')).toEqual([]);
  expect(await turnsFor('ira', { organizationId: 'college' })).toEqual([]);
  expect(await turnsFor('ira', { assignmentId: 'another' })).toEqual([]);
  await together(db, [writing({ sittingId: 'questions', place: 1 })]);
  expect(await turnsFor('ira')).toEqual([['turn', true]]);
  expect(await turnsFor('ira', { unseen: true })).toEqual([]);
});

test('of attempts those are there that were called outside an assignment', async () => {
  const ids = async (reviewerId: string, more = {}) =>
    (await listFinishedAttempts(db, asked(reviewerId, more), 10)).map(({ id }) => id);
  expect(await ids('ira')).toEqual([]);
  await recordAttempt(db, anAttempt({ id: 'alone', learnerId: 'lea', organizationId: 'harbour', key: 'alone' }));
  expect(await ids('ira')).toEqual([]);
  await recordCall(db, 'lea', aNewCall({ attemptId: 'alone', key: 'alone' }));
  expect(await ids('ira')).toEqual(['alone']);
  expect(await ids('lea')).toEqual([]);
  await together(db, [writing({ attemptId: 'alone' })]);
  expect(await ids('ira', { unseen: true })).toEqual([]);
});

test('whoever is at the same case and has not called it is told apart', async () => {
  const { caseCode } = anAttempt();
  expect(await isAtCase(db, 'ira', caseCode)).toBe(false);
  await recordAttempt(db, anAttempt({ id: 'own', learnerId: 'ira', organizationId: 'harbour', key: 'own' }));
  expect(await isAtCase(db, 'ira', caseCode)).toBe(true);
  await recordCall(db, 'ira', aNewCall({ attemptId: 'own', key: 'own' }));
  expect(await isAtCase(db, 'ira', caseCode)).toBe(false);
});

test('points are added, with what the turn came to forgotten, and read back in their order', async () => {
  await db.insert(turnResults).values({ turnId: 'turn', total: 50, waiting: 0, tasks: [] });
  const give = (id: string, points: number | null, minute: number) =>
    together(
      db,
      givingPoints(db, {
        id,
        attemptId: 'case',
        part: 'route',
        points,
        reason: 'Said it well',
        givenBy: 'ira',
        givenAt: new Date(noon.getTime() + minute),
      }),
    );
  await give('b', 10, 1);
  await give('a', null, 2);
  expect((await listOverridesOf(db, { attemptId: 'case' })).map(({ points }) => points)).toEqual([10, null]);
  expect(await listOverridesOf(db, { sittingId: 'questions' })).toEqual([]);
  expect(await db.select().from(turnResults)).toEqual([]);
});

test('comments stand with the work that they are about', async () => {
  await together(db, [
    writing({ attemptId: 'case' }, 'a'),
    writing({ sittingId: 'questions', place: 1 }, 'b'),
    writing({ sittingId: 'questions' }, 'c'),
  ]);
  const ids = async (work: Parameters<typeof listComments>[1]) => (await listComments(db, work)).map(({ id }) => id);
  expect(await ids({ attemptId: 'case' })).toEqual(['a']);
  expect(await ids({ sittingId: 'questions' })).toEqual(['b', 'c']);
  expect(await ids({ sittingId: 'questions', place: 1 })).toEqual(['b']);
  expect((await listComments(db, { attemptId: 'case' }))[0]?.writer).toBe('ira');
});
