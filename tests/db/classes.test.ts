import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingClass,
  addingClassPlace,
  changingClass,
  findClass,
  findClassByJoinCode,
  listClasses,
  listClassPeople,
  listWithoutPlace,
  removingClassPlace,
} from '@/db/queries/classes';
import { addingMember } from '@/db/queries/members';
import { addingOrganization } from '@/db/queries/organizations';
import { addingUser } from '@/db/queries/users';
import { together } from '@/db/together';
import { aMember, anOrganization, aUser } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

const now = new Date(Date.UTC(2026, 0, 10));
const later = new Date(Date.UTC(2026, 0, 20));
const morning = { id: 'morning', organizationId: 'harbour', name: 'Morning class', createdAt: now };
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [
    addingOrganization(db, anOrganization()),
    addingOrganization(db, anOrganization({ id: 'college', slug: 'college' })),
    addingUser(db, aUser()),
    addingUser(db, aUser({ id: 'ben', name: 'Ben', email: 'ben@harbour.invalid' })),
    addingUser(db, aUser({ id: 'cas', name: 'Cas', email: 'cas@college.invalid' })),
    addingMember(db, aMember()),
    addingMember(db, aMember({ id: 'ben-at-harbour', userId: 'ben' })),
    addingMember(db, aMember({ id: 'cas-at-college', userId: 'cas', organizationId: 'college' })),
    addingClass(db, morning),
    addingClass(db, { ...morning, id: 'other', organizationId: 'college' }),
  ]);
});

async function morningClass() {
  const found = await findClass(db, 'morning');
  if (!found) throw new Error('The class is gone');
  return found;
}

describe('the list of classes', () => {
  test('holds those of the organisation alone, with how many are in each, those put away last', async () => {
    await together(db, [
      addingClass(db, { ...morning, id: 'early', name: 'A class before', archivedAt: now }),
      addingClassPlace(db, { classId: 'morning', userId: 'ada', joinedAt: now }),
    ]);
    const lines = await listClasses(db, 'harbour', 10);
    expect(lines.map(({ id, people }) => ({ id, people }))).toEqual([
      { id: 'morning', people: 1 },
      { id: 'early', people: 0 },
    ]);
  });
});

describe('a class', () => {
  test('is added once', async () => {
    await together(db, [addingClass(db, { ...morning, name: 'Sent again' })]);
    expect((await morningClass()).name).toBe('Morning class');
  });
});

describe('a place in a class', () => {
  test('is offered to whoever learns in the organisation now, and to nobody else', async () => {
    const of = { organizationId: 'harbour' };
    await together(db, [
      ...['dan', 'eve', 'fay'].map((id) => addingUser(db, aUser({ id, name: id, email: `${id}@harbour.invalid` }))),
      addingMember(db, aMember({ ...of, id: 'dan', userId: 'dan', role: 'instructor,shop-lead,administrator' })),
      addingMember(db, aMember({ ...of, id: 'eve', userId: 'eve', deactivatedAt: now })),
      addingMember(db, aMember({ ...of, id: 'fay', userId: 'fay', role: 'learner,instructor' })),
    ]);
    const offered = await listWithoutPlace(db, await morningClass(), 10);
    expect(offered.map(({ id }) => id)).toEqual(['ada', 'ben', 'fay']);
  });

  test('is given once, and taken', async () => {
    const place = { classId: 'morning', userId: 'ada', joinedAt: now };
    await together(db, [addingClassPlace(db, place), addingClassPlace(db, place)]);
    expect((await listClassPeople(db, await morningClass(), 10)).map(({ id }) => id)).toEqual(['ada']);
    expect((await listWithoutPlace(db, await morningClass(), 10)).map(({ id }) => id)).toEqual(['ben']);
    await together(db, [removingClassPlace(db, place)]);
    expect(await listClassPeople(db, await morningClass(), 10)).toEqual([]);
  });

  test('of somebody who is not of the organisation any more is not shown', async () => {
    await together(db, [addingClassPlace(db, { classId: 'morning', userId: 'cas', joinedAt: now })]);
    expect(await listClassPeople(db, await morningClass(), 10)).toEqual([]);
  });
});

describe('a join code', () => {
  const code = { joinCode: '4KTP9XWM', joinCodeEndsAt: later };

  test('opens its class until it ends', async () => {
    await together(db, [changingClass(db, 'morning', code)]);
    expect((await findClassByJoinCode(db, code.joinCode, now))?.id).toBe('morning');
    expect(await findClassByJoinCode(db, code.joinCode, later)).toBeUndefined();
    expect(await findClassByJoinCode(db, '00000000', now)).toBeUndefined();
  });

  test('opens nothing once another has taken its place, or it is closed', async () => {
    const other = '0A1B2C3D';
    await together(db, [changingClass(db, 'morning', code), changingClass(db, 'morning', { joinCode: other })]);
    expect(await findClassByJoinCode(db, code.joinCode, now)).toBeUndefined();
    expect((await findClassByJoinCode(db, other, now))?.id).toBe('morning');
    await together(db, [changingClass(db, 'morning', { joinCode: null, joinCodeEndsAt: null })]);
    expect(await findClassByJoinCode(db, other, now)).toBeUndefined();
  });

  test('of a class that is put away opens nothing', async () => {
    await together(db, [changingClass(db, 'morning', { ...code, archivedAt: now })]);
    expect(await findClassByJoinCode(db, code.joinCode, now)).toBeUndefined();
  });

  test('is no class’s without one', async () => {
    expect(await findClassByJoinCode(db, '', now)).toBeUndefined();
  });
});
