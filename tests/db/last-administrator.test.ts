import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { erasingMember, mergingMembers } from '@/db/queries/leaving';
import { findMember } from '@/db/queries/members';
import { changingDeactivated, changingRoleSafely } from '@/db/queries/people';
import { claimThen, type Statement } from '@/db/together';
import { addHeld, addPersonOf, everything, makeShopAndCollege, noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

const organizationId = 'harbour';
let db: Db;

/** Every way in which somebody may stop administering the harbour. */
const ways: Record<string, (userId: string) => { claim: Statement; others: Statement[] }> = {
  'lose the role': (userId) => ({
    claim: changingRoleSafely(db, { organizationId, userId, role: 'learner,instructor' }),
    others: [],
  }),
  'be deactivated': (userId) => ({
    claim: changingDeactivated(db, { organizationId, userId, at: noon }),
    others: [],
  }),
  'be erased': (userId) => erasingMember(db, { organizationId, userId }, 'lea'),
  'be merged into another': (doubleId) =>
    mergingMembers(db, { organizationId, keptId: 'lea', doubleId, role: 'learner' }),
};

async function attempt(way: string, userId: string): Promise<boolean> {
  const made = ways[way]?.(userId);
  if (!made) throw new Error(`No such way: ${way}`);
  return claimThen(db, made.claim, made.others);
}

beforeEach(async () => {
  db = testDatabase();
  await makeShopAndCollege(db);
  await addPersonOf(db, 'ada', { harbour: 'learner,administrator' });
  await addPersonOf(db, 'lea', { harbour: 'learner' });
  await addHeld(db, 'ada', 'harbour');
});

describe.each(Object.keys(ways))('who administers an organisation may %s', (way) => {
  test.each<[string, () => Promise<void>]>([
    ['nobody else does', async () => {}],
    [
      'whoever else does is deactivated',
      () => addPersonOf(db, 'old', { harbour: 'administrator' }, { deactivatedAt: noon }),
    ],
    [
      'others do so in another organisation',
      () => addPersonOf(db, 'cas', { college: 'administrator', harbour: 'shop-lead' }),
    ],
    ['all others are something else', () => addPersonOf(db, 'ira', { harbour: 'instructor,shop-lead' })],
  ])('not while %s', async (_, prepare) => {
    await prepare();
    const before = await everything(db);
    expect(await attempt(way, 'ada')).toBe(false);
    expect(await everything(db)).toEqual(before);
  });

  test('while somebody else does, who is left and cannot', async () => {
    await addPersonOf(db, 'ben', { harbour: 'instructor,administrator' });
    expect(await attempt(way, 'ada')).toBe(true);
    expect(await attempt(way, 'ben')).toBe(false);
    expect((await findMember(db, 'harbour', 'ben'))?.role).toContain('administrator');
  });

  test('when they are deactivated already and somebody else does', async () => {
    await addPersonOf(db, 'old', { harbour: 'administrator' }, { deactivatedAt: noon });
    expect(await attempt(way, 'old')).toBe(true);
  });

  test('and whoever does not administer may too', async () => {
    await addPersonOf(db, 'ben', { harbour: 'instructor' });
    expect(await attempt(way, 'ben')).toBe(true);
  });

  test('not where they are no member', async () => {
    await addPersonOf(db, 'cas', { college: 'learner' });
    const before = await everything(db);
    expect(await attempt(way, 'cas')).toBe(false);
    expect(await everything(db)).toEqual(before);
  });
});

test('the last who administers may be given further roles', async () => {
  const role = 'learner,shop-lead,administrator';
  expect(changingRoleSafely(db, { organizationId, userId: 'ada', role }).run().changes).toBe(1);
  expect((await findMember(db, 'harbour', 'ada'))?.role).toBe(role);
});

test('somebody deactivated is let in again', async () => {
  await addPersonOf(db, 'old', { harbour: 'administrator' }, { deactivatedAt: noon });
  expect(changingDeactivated(db, { organizationId, userId: 'old', at: null }).run().changes).toBe(1);
  expect((await findMember(db, 'harbour', 'old'))?.deactivatedAt).toBeNull();
});
