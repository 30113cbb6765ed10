import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingLogEntry, listLogEntries } from '@/db/queries/log-entries';
import { addingOrganization, findOrganization } from '@/db/queries/organizations';
import { addingUser, changingName, findUser } from '@/db/queries/users';
import { claimThen, together } from '@/db/together';
import { anOrganization, aUser } from '../support/people-rows';
import { noon } from '../support/shop-rows';
import { testDatabase } from '../support/test-database';

let db: Db;

beforeEach(() => {
  db = testDatabase();
});

const entry = () =>
  addingLogEntry(db, { at: noon, organizationId: 'harbour', actorId: 'ada', event: 'person-renamed' });
const renaming = (userId: string) => changingName(db, { userId, name: 'Ada B.', at: noon });

test('statements do nothing before they are run', async () => {
  addingUser(db, aUser());
  expect(await findUser(db, 'ada')).toBeUndefined();
});

test('what goes together stands together', async () => {
  await together(db, [addingOrganization(db, anOrganization()), addingUser(db, aUser())]);
  expect(await findOrganization(db, 'harbour')).toBeDefined();
  expect(await findUser(db, 'ada')).toBeDefined();
});

test('where one of several fails, nothing of them stands and the failure is told', async () => {
  const taken = aUser({ id: 'other-ada' });
  const statements = [
    addingOrganization(db, anOrganization()),
    addingUser(db, aUser()),
    addingUser(db, taken),
    entry(),
  ];
  await expect(together(db, statements)).rejects.toThrow(/UNIQUE/);
  expect(await findOrganization(db, 'harbour')).toBeUndefined();
  expect(await findUser(db, 'ada')).toBeUndefined();
  expect(await listLogEntries(db, 'harbour', {}, 10)).toEqual([]);
});

test('after a failure the next may go on', async () => {
  await expect(together(db, [addingUser(db, aUser()), addingUser(db, aUser())])).rejects.toThrow();
  await together(db, [addingUser(db, aUser())]);
  expect(await findUser(db, 'ada')).toBeDefined();
});

test('what hangs on a claim happens with it', async () => {
  await together(db, [addingUser(db, aUser())]);
  expect(await claimThen(db, renaming('ada'), [entry()])).toBe(true);
  expect((await findUser(db, 'ada'))?.name).toBe('Ada B.');
  expect(await listLogEntries(db, 'harbour', {}, 10)).toHaveLength(1);
});

test('what hangs on a claim that changes nothing does not happen', async () => {
  expect(await claimThen(db, renaming('nobody'), [addingUser(db, aUser()), entry()])).toBe(false);
  expect(await findUser(db, 'ada')).toBeUndefined();
  expect(await listLogEntries(db, 'harbour', {}, 10)).toEqual([]);
});

test('a claim is taken back where what hangs on it fails', async () => {
  await together(db, [addingUser(db, aUser())]);
  await expect(claimThen(db, renaming('ada'), [entry(), addingUser(db, aUser())])).rejects.toThrow(/UNIQUE/);
  expect((await findUser(db, 'ada'))?.name).toBe('Ada');
  expect(await listLogEntries(db, 'harbour', {}, 10)).toEqual([]);
});
