import { beforeEach, expect, test } from 'vitest';
import { findHeldProfile, findProfile, listProfiles, versionOf } from '@/app/_server/profiles';
import type { Db } from '@/db/client';
import { addingOrganization } from '@/db/queries/organizations';
import { addingProfile } from '@/db/queries/role-profiles';
import { claimThen, together } from '@/db/together';
import type { RoleProfile } from '@/lib/readiness/profile';
import { aRoleProfile } from '../support/competency-rows';
import { testDatabase } from '../support/test-database';

const at = new Date(Date.UTC(2026, 0, 1));
const [here, there] = ['yard', 'college'];
const low = 'low-pressure-unsupervised';
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  for (const id of [here, there])
    await together(db, [addingOrganization(db, { id, name: id, slug: id, createdAt: at })]);
});

function write(profileId: string, version: number, body: RoleProfile | null): Promise<boolean> {
  const row = {
    id: `${profileId} ${version}`,
    organizationId: here,
    profileId,
    version,
    body,
    changedBy: 'lead',
    changedAt: at,
  };
  return claimThen(db, addingProfile(db, row), []);
}

test('the ready profiles are there until an organisation says otherwise, and go from less to more', async () => {
  const ids = (await listProfiles(db, here)).map(({ id }) => id);
  expect(ids).toEqual(['assist-under-supervision', low, 'high-pressure-unsupervised']);
});

test('what an organisation wrote last counts, for itself alone', async () => {
  const ready = (await findProfile(db, here, low)) as RoleProfile;
  await write(low, 2, { ...ready, version: 2, minutes: 90 });
  await write(low, 3, { ...ready, version: 3, minutes: 100 });
  expect(await findProfile(db, here, low)).toMatchObject({ version: 3, minutes: 100 });
  expect(await findProfile(db, there, low)).toEqual(ready);
});

test('a version is written once', async () => {
  const ready = (await findProfile(db, here, low)) as RoleProfile;
  expect(await write(low, 2, { ...ready, minutes: 90 })).toBe(true);
  const again = {
    id: 'again',
    organizationId: here,
    profileId: low,
    version: 2,
    body: null,
    changedBy: 'x',
    changedAt: at,
  };
  expect(await claimThen(db, addingProfile(db, again), [])).toBe(false);
  expect((await findProfile(db, here, low))?.minutes).toBe(90);
});

test('a profile that is done without is found among those held, as it was, whoever wrote it', async () => {
  await write(low, 2, null);
  await write('our-own', 1, aRoleProfile({ id: 'our-own' }));
  await write('our-own', 2, null);
  expect((await listProfiles(db, here)).map(({ id }) => id)).not.toContain(low);
  expect(await findProfile(db, here, 'our-own')).toBeUndefined();
  for (const id of [low, 'our-own']) {
    const held = await findHeldProfile(db, here, id);
    expect(held).toMatchObject({ retired: true, profile: { id } });
    expect(held && versionOf(held)).toBe(2);
  }
});
