import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  addingCredential,
  addingUser,
  changingCredential,
  changingName,
  countUsers,
  findUser,
  findUserByAddress,
  hasCredential,
} from '@/db/queries/users';
import { accounts } from '@/db/schema';
import { together } from '@/db/together';
import { aUser } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

const at = new Date(Date.UTC(2026, 3, 1));
const later = new Date(Date.UTC(2026, 3, 2));
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [
    addingUser(db, aUser({ id: 'ada', name: 'Ada', email: 'ada@harbour.example' })),
    addingUser(db, aUser({ id: 'ben', name: 'Ben', email: 'ben@harbour.invalid' })),
    addingCredential(db, { userId: 'ada', hash: 'old', at }),
  ]);
});

const hashesOf = async (userId: string) => db.select().from(accounts).where(eq(accounts.userId, userId));

describe('somebody', () => {
  test('is found by what they sign in with, as it is stored and no other way', async () => {
    expect((await findUserByAddress(db, 'ben@harbour.invalid'))?.id).toBe('ben');
    for (const other of ['ben@harbour', 'ben', 'ben@harbour.invalid ', '%', ''])
      expect(await findUserByAddress(db, other), other).toBeUndefined();
    expect((await findUser(db, 'ada'))?.name).toBe('Ada');
    expect(await countUsers(db)).toBe(2);
  });

  test('signs in with what nobody else signs in with', async () => {
    const double = aUser({ id: 'other', email: 'ada@harbour.example' });
    await expect(
      together(db, [addingUser(db, double), addingCredential(db, { userId: 'ada', hash: 'x', at })]),
    ).rejects.toThrow();
    expect(await countUsers(db)).toBe(2);
    expect(await hashesOf('ada')).toMatchObject([{ password: 'old' }]);
  });

  test('gets another name and nobody else does', async () => {
    await together(db, [changingName(db, { userId: 'ada', name: '<b>Ada</b>', at: later })]);
    expect(await findUser(db, 'ada')).toMatchObject({
      name: '<b>Ada</b>',
      updatedAt: later,
      email: 'ada@harbour.example',
    });
    expect((await findUser(db, 'ben'))?.name).toBe('Ben');
  });
});

describe('a password or PIN', () => {
  test('is there once it is given', async () => {
    expect(await hasCredential(db, 'ada')).toBe(true);
    expect(await hasCredential(db, 'ben')).toBe(false);
    await together(db, [addingCredential(db, { userId: 'ben', hash: 'first', at })]);
    expect(await hasCredential(db, 'ben')).toBe(true);
  });

  test('is set anew for one person alone, in the place of the old one', async () => {
    await together(db, [
      addingCredential(db, { userId: 'ben', hash: 'of ben', at }),
      changingCredential(db, { userId: 'ada', hash: 'new', at: later }),
    ]);
    expect(await hashesOf('ada')).toMatchObject([{ password: 'new', updatedAt: later }]);
    expect(await hashesOf('ben')).toMatchObject([{ password: 'of ben', updatedAt: at }]);
  });

  test('set anew for somebody who has none is nothing', () => {
    expect(changingCredential(db, { userId: 'ben', hash: 'new', at: later }).run().changes).toBe(0);
  });
});
