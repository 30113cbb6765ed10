import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { listLiveAnswers, listLiveCases, listLiveReadings } from '@/db/queries/live-turns';
import { addingOrganization } from '@/db/queries/organizations';
import { calls, sittingAnswers, sittings, turnTasks } from '@/db/schema';
import { together } from '@/db/together';
import { aCall, aFinding, aGrade, anAct, anAttempt, aReading } from '../support/attempt-rows';
import { anOrganization } from '../support/people-rows';
import { addAssignment, addSet, addTurn } from '../support/teaching-rows';
import { testDatabase } from '../support/test-database';

const at = (minute: number) => new Date(Date.UTC(2026, 0, 2, 8, minute));
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [addingOrganization(db, anOrganization())]);
  const { versionId } = await addSet(db, { id: 'supply', organizationId: 'harbour', createdBy: 'ira' });
  for (const id of ['quiz', 'other'])
    await addAssignment(db, { id, organizationId: 'harbour', setVersionId: versionId, createdBy: 'ira' });
});

async function aTurnWithCase(id: string, assignmentId: string, minute: number): Promise<void> {
  const whose = { learnerId: 'ada', organizationId: 'harbour' };
  const sitting = { id: `s-${id}`, ...whose, key: `s-${id}`, mode: 'check' as const, topics: [], createdAt: at(0) };
  await db.insert(sittings).values(sitting);
  await addTurn(db, { id, assignmentId, ...whose, sittingId: sitting.id });
  await recordAttempt(db, anAttempt({ id: `case-${id}`, ...whose, key: id, createdAt: at(minute) }));
  await db.insert(turnTasks).values([
    { turnId: id, place: 1, attemptId: `case-${id}` },
    { turnId: id, place: 2, sittingPlace: 1 },
    { turnId: id, place: 3, sittingPlace: 2 },
  ]);
}

test('a case tells when it was opened, last worked at and called; those of another assignment are not told', async () => {
  await aTurnWithCase('one', 'quiz', 1);
  await aTurnWithCase('two', 'other', 1);
  const act = { attemptId: 'case-one', createdAt: at(2) };
  await recordAct(db, 'ada', anAct(act));
  await recordAct(db, 'ada', anAct({ ...act, seq: 2, key: 'b', body: aFinding(), createdAt: at(5) }));
  const line = { turnId: 'one', place: 1, attemptId: 'case-one', caseCode: 'AAA-AAAA-AA', openedAt: at(1) };
  expect(await listLiveCases(db, 'quiz')).toEqual([{ ...line, lastActAt: at(5), calledAt: null }]);
  const called = { attemptId: 'case-one', seq: 3, key: 'c', body: aCall, grade: aGrade, total: 71, calledAt: at(9) };
  await db.insert(calls).values(called);
  expect(await listLiveCases(db, 'quiz')).toEqual([{ ...line, lastActAt: at(5), calledAt: at(9) }]);
});

test('a case that nothing was done at was opened all the same', async () => {
  await aTurnWithCase('one', 'quiz', 1);
  expect(await listLiveCases(db, 'quiz')).toMatchObject([{ openedAt: at(1), lastActAt: null, calledAt: null }]);
});

test('questions are told by their place in the turn, with the last answer', async () => {
  await aTurnWithCase('one', 'quiz', 1);
  const answer = { sittingId: 's-one', place: 2, body: { form: 'words' as const, text: 'air' } };
  await db.insert(sittingAnswers).values([
    { ...answer, seq: 1, key: 'a', answeredAt: at(3) },
    { ...answer, seq: 2, key: 'b', answeredAt: at(4) },
  ]);
  expect(await listLiveAnswers(db, 'quiz')).toEqual([{ turnId: 'one', place: 3, answeredAt: at(4) }]);
  expect(await listLiveAnswers(db, 'other')).toEqual([]);
});

test('readings alone are told, of the attempts asked for', async () => {
  await aTurnWithCase('one', 'quiz', 1);
  await recordAct(db, 'ada', anAct({ attemptId: 'case-one' }));
  await recordAct(db, 'ada', anAct({ attemptId: 'case-one', seq: 2, key: 'b', body: aFinding() }));
  expect(await listLiveReadings(db, ['case-one'])).toEqual([{ attemptId: 'case-one', seq: 1, body: aReading() }]);
  expect(await listLiveReadings(db, [])).toEqual([]);
});
