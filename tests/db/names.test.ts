import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingMember, changingErasureAsked, findMember } from '@/db/queries/members';
import { listClassNames, listMemberNames, listNames } from '@/db/queries/names';
import { addingOrganization } from '@/db/queries/organizations';
import { addingUser, changingName, findUser } from '@/db/queries/users';
import { classes } from '@/db/schema';
import { together } from '@/db/together';
import { aMember, anOrganization, aUser } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

const at = new Date(Date.UTC(2026, 0, 2));

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [
    addingOrganization(db, anOrganization()),
    addingOrganization(db, anOrganization({ id: 'college', slug: 'college' })),
    addingUser(db, aUser()),
    addingUser(db, aUser({ id: 'ben', name: 'Ben', email: 'ben@college.invalid' })),
    addingMember(db, aMember({ deactivatedAt: at })),
    addingMember(db, aMember({ id: 'ada-at-college', organizationId: 'college' })),
    addingMember(db, aMember({ id: 'ben-at-college', organizationId: 'college', userId: 'ben' })),
  ]);
  await db.insert(classes).values({ id: 'evening', organizationId: 'college', name: 'Evening class', createdAt: at });
});

test('names are told of an organisation’s own members, deactivated ones too, and of nobody else', async () => {
  expect(await listNames(db, 'harbour', ['ada', 'ben', 'eve'])).toEqual([{ id: 'ada', name: 'Ada' }]);
  expect(await listMemberNames(db, 'harbour', 10)).toEqual([{ id: 'ada', name: 'Ada' }]);
  expect((await listMemberNames(db, 'college', 10)).map(({ name }) => name)).toEqual(['Ada', 'Ben']);
  expect(await listMemberNames(db, 'college', 1)).toHaveLength(1);
});

test('no ids ask for no names', async () => {
  expect(await listNames(db, 'harbour', [])).toEqual([]);
});

test('a class is named in its own organisation alone', async () => {
  expect(await listClassNames(db, 'college', ['evening'])).toEqual([{ id: 'evening', name: 'Evening class' }]);
  expect(await listClassNames(db, 'harbour', ['evening'])).toEqual([]);
});

test('renaming somebody renames nobody else', async () => {
  await together(db, [changingName(db, { userId: 'ada', name: 'Ada Anchor', at })]);
  expect(await findUser(db, 'ada')).toMatchObject({ name: 'Ada Anchor', updatedAt: at });
  expect(await findUser(db, 'ben')).toMatchObject({ name: 'Ben' });
});

test('asking to be erased from one organisation asks no other', async () => {
  const ask = { organizationId: 'harbour', userId: 'ada' };
  await together(db, [changingErasureAsked(db, { ...ask, at })]);
  expect((await findMember(db, 'harbour', 'ada'))?.erasureAskedAt).toEqual(at);
  expect((await findMember(db, 'college', 'ada'))?.erasureAskedAt).toBeNull();
  await together(db, [changingErasureAsked(db, { ...ask, at: null })]);
  expect((await findMember(db, 'harbour', 'ada'))?.erasureAskedAt).toBeNull();
});
