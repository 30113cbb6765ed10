import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingMember,
  changingErasureAsked,
  changingRole,
  findMember,
  isInstallationsKeeper,
  listHolding,
  listMemberships,
} from '@/db/queries/members';
import { changingDeactivated, changingRoleSafely } from '@/db/queries/people';
import { together } from '@/db/together';
import { aMember } from '../support/people-rows';
import { addPersonOf, dayAfter, makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'administrator' }, { keeper: true });
  await addPersonOf(db, 'bo', { harbour: 'learner', college: 'instructor' });
  await addPersonOf(db, 'cas', { harbour: 'learner', college: 'administrator' }, { deactivatedAt: noon });
});

const harbourBo = { organizationId: 'harbour', userId: 'bo' };

test('somebody is let in where they belong and nobody closed it to them', async () => {
  const memberships = await listMemberships(db, 'bo');
  expect(memberships.map(({ organizationId, role }) => [organizationId, role])).toEqual([
    ['harbour', 'learner'],
    ['college', 'instructor'],
  ]);
  expect(await listMemberships(db, 'cas')).toEqual([]);
  expect(await listMemberships(db, 'nobody')).toEqual([]);
});

test('an organisation that closed itself to somebody holds them all the same', async () => {
  expect((await listHolding(db, 'cas')).map(({ organizationId }) => organizationId)).toEqual(['harbour', 'college']);
  expect(await findMember(db, 'college', 'cas')).toMatchObject({ deactivatedAt: noon });
});

test('somebody is a member of an organisation once', async () => {
  const again = addingMember(
    db,
    aMember({ id: 'again', organizationId: 'harbour', userId: 'bo', role: 'administrator' }),
  );
  await expect(together(db, [again])).rejects.toThrow();
  expect(await findMember(db, 'harbour', 'bo')).toMatchObject({ role: 'learner' });
  expect(await findMember(db, 'yard', 'bo')).toBeUndefined();
});

test('a keeper is who is marked as one', async () => {
  expect(await isInstallationsKeeper(db, 'ada')).toBe(true);
  expect(await isInstallationsKeeper(db, 'bo')).toBe(false);
  expect(await isInstallationsKeeper(db, 'nobody')).toBe(false);
});

describe('what changes for a member', () => {
  test.each([
    ['roles', () => changingRole(db, { ...harbourBo, role: 'shop-lead' }), { role: 'shop-lead' }],
    [
      'roles, with a look at who else administers',
      () => changingRoleSafely(db, { ...harbourBo, role: 'shop-lead' }),
      { role: 'shop-lead' },
    ],
    ['the way in', () => changingDeactivated(db, { ...harbourBo, at: dayAfter }), { deactivatedAt: dayAfter }],
    [
      'that they asked to be erased',
      () => changingErasureAsked(db, { ...harbourBo, at: dayAfter }),
      { erasureAskedAt: dayAfter },
    ],
  ])('%s, changes in one organisation, for one person', async (_, change, changed) => {
    const others = async () => [await findMember(db, 'college', 'bo'), await findMember(db, 'harbour', 'cas')];
    const before = await others();
    await together(db, [change()]);
    expect(await findMember(db, 'harbour', 'bo')).toMatchObject(changed);
    expect(await others()).toEqual(before);
  });

  test('is nothing where the organisation does not have them', () => {
    const key = { organizationId: 'college', userId: 'ada' };
    expect(changingRoleSafely(db, { ...key, role: 'administrator' }).run().changes).toBe(0);
    expect(changingDeactivated(db, { ...key, at: noon }).run().changes).toBe(0);
    expect(changingErasureAsked(db, { ...key, at: noon }).run().changes).toBe(0);
  });

  test('the way in is opened again', async () => {
    await together(db, [changingDeactivated(db, { organizationId: 'college', userId: 'cas', at: null })]);
    expect((await listMemberships(db, 'cas')).map(({ organizationId }) => organizationId)).toEqual(['college']);
  });
});
