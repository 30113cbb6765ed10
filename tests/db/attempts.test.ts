import { expect, test } from 'vitest';
import { recordAct } from '@/db/queries/acts';
import { countAttempts, findAttempt, findStarted, listAttempts, recordAttempt } from '@/db/queries/attempts';
import { recordCall } from '@/db/queries/calls';
import { addingOrganization } from '@/db/queries/organizations';
import { together } from '@/db/together';
import { aNewCall, anAct, anAttempt } from '../support/attempt-rows';
import { anOrganization } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

test('a learner finds their own attempt and nobody else does', async () => {
  const db = testDatabase();
  await recordAttempt(db, anAttempt());
  expect(await findAttempt(db, 'ada', 'attempt-a')).toEqual(anAttempt());
  expect(await findAttempt(db, 'ben', 'attempt-a')).toBeUndefined();
  expect(await findAttempt(db, 'ada', 'attempt-b')).toBeUndefined();
});

test('starting twice with the same key returns the first attempt', async () => {
  const db = testDatabase();
  await recordAttempt(db, anAttempt());
  const again = await recordAttempt(db, anAttempt({ id: 'attempt-b', caseCode: 'BBB-BBBB-BB' }));
  expect(again).toEqual(anAttempt());
  expect(await countAttempts(db)).toBe(1);
});

test('an attempt keeps how hard its case is, why, and whether it is coached', async () => {
  const db = testDatabase();
  const attempt = anAttempt({
    difficulty: 0.43,
    features: { checks: 4, conditions: 3, closeness: 2.1, lookAlikes: 2, masked: false },
    coached: true,
  });
  await recordAttempt(db, attempt);
  expect(await findAttempt(db, 'ada', 'attempt-a')).toEqual(attempt);
});

test('an attempt is found by the key that started it, by its learner alone', async () => {
  const db = testDatabase();
  await recordAttempt(db, anAttempt());
  expect(await findStarted(db, 'ada', 'start-a')).toEqual(anAttempt());
  expect(await findStarted(db, 'ada', 'start-b')).toBeUndefined();
  expect(await findStarted(db, 'ben', 'start-a')).toBeUndefined();
});

test('two learners may make the same key', async () => {
  const db = testDatabase();
  await recordAttempt(db, anAttempt());
  await recordAttempt(db, anAttempt({ id: 'attempt-b', learnerId: 'ben' }));
  expect(await countAttempts(db)).toBe(2);
});

test('the list holds only the learner’s own attempts in the organisation, newest first, with what is done and the score', async () => {
  const db = testDatabase();
  for (const organization of ['harbour', 'college'])
    await together(db, [addingOrganization(db, anOrganization({ id: organization, slug: organization }))]);
  const here = { organizationId: 'harbour' };
  await recordAttempt(db, anAttempt(here));
  const later = new Date(Date.UTC(2026, 0, 2));
  await recordAttempt(db, anAttempt({ ...here, id: 'attempt-b', key: 'start-b', createdAt: later }));
  await recordAttempt(db, anAttempt({ ...here, id: 'attempt-c', learnerId: 'ben' }));
  await recordAttempt(db, anAttempt({ organizationId: 'college', id: 'attempt-d', key: 'start-d' }));
  await recordAct(db, 'ada', anAct());
  await recordCall(db, 'ada', aNewCall({ seq: 2 }));
  const lines = await listAttempts(db, { learnerId: 'ada', ...here }, 10);
  expect(lines.map(({ id, acts, total }) => ({ id, acts, total }))).toEqual([
    { id: 'attempt-b', acts: 0, total: null },
    { id: 'attempt-a', acts: 1, total: 71 },
  ]);
  expect(await listAttempts(db, { learnerId: 'ada', ...here }, 1)).toHaveLength(1);
});
