import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingClassPlace } from '@/db/queries/classes';
import { listTrainingParts } from '@/db/queries/part-in-training';
import { assignedClasses, assignedPeople, observations, overrides } from '@/db/schema';
import { together } from '@/db/together';
import { addHandedIn, markText } from '../support/review-rows';
import { noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await addHandedIn(db, { secondMarker: true });
});

const partsOf = (personId: string, learnerId = 'lea', organizationId = 'harbour') =>
  listTrainingParts(db, { organizationId, personId, learnerId });

test('somebody who has only been there had no part', async () => {
  expect(await partsOf('ada')).toEqual([]);
});

test('who marked free text of somebody, or gave points of their own, marked them and nobody else', async () => {
  await markText(db, 'ira', 3);
  expect(await partsOf('ira')).toEqual(['marked']);
  expect(await partsOf('ira', 'luc')).toEqual([]);
  expect(await partsOf('ira', 'lea', 'college')).toEqual([]);
  const points = { sittingId: 'questions', place: 1, points: 1, reason: 'Half right', givenBy: 'ida', givenAt: noon };
  await db.insert(overrides).values({ id: 'one', ...points });
  expect(await partsOf('ida')).toEqual(['marked']);
});

test('who watched a hands-on check observed', async () => {
  const seen = { organizationId: 'harbour', learnerId: 'lea', items: [], unsafe: false, comment: '' };
  await db.insert(observations).values({ id: 'one', ...seen, observedBy: 'ida', observedAt: noon, writtenAt: noon });
  expect(await partsOf('ida')).toEqual(['observed']);
  expect(await partsOf('ida', 'luc')).toEqual([]);
});

test('who set work for somebody, by name or through a class, taught them', async () => {
  await db.insert(assignedPeople).values({ assignmentId: 'week-one', userId: 'lea', named: true });
  expect(await partsOf('ira')).toEqual(['taught']);
  await db.delete(assignedPeople);
  await db.insert(assignedClasses).values({ assignmentId: 'week-one', classId: 'harbour-class' });
  expect(await partsOf('ira')).toEqual([]);
  await together(db, [addingClassPlace(db, { classId: 'harbour-class', userId: 'lea', joinedAt: noon })]);
  expect(await partsOf('ira')).toEqual(['taught']);
});
