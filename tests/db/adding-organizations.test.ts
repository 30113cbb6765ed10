import { beforeEach, describe, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import { addingInvitation, findOpenInvitation, withdrawingInvitations } from '@/db/queries/invitations';
import { addingMember } from '@/db/queries/members';
import {
  addingOrganization,
  addingUntakenOrganization,
  findOrganization,
  hasMembers,
  listOrganizations,
} from '@/db/queries/organizations';
import { addingUser } from '@/db/queries/users';
import { claimThen, together } from '@/db/together';
import { aMember, anOrganization, aUser } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

const now = new Date(Date.UTC(2026, 0, 10));
const college = anOrganization({ id: 'college', name: 'Hill College', slug: 'college' });
let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [
    addingOrganization(db, anOrganization()),
    addingOrganization(db, college),
    addingUser(db, aUser()),
    addingMember(db, aMember()),
  ]);
});

describe('a further organisation', () => {
  test('is not added where another goes by its short name, nor anything that belongs to it', async () => {
    const second = anOrganization({ id: 'second', slug: 'harbour' });
    const member = addingMember(db, aMember({ id: 'ada-at-second', organizationId: 'second' }));
    expect(await claimThen(db, addingUntakenOrganization(db, second), [member])).toBe(false);
    expect(await findOrganization(db, 'second')).toBeUndefined();
    expect(await hasMembers(db, 'second')).toBeUndefined();
  });

  test('is listed by name with how many people it has', async () => {
    const lines = await listOrganizations(db, 10);
    expect(lines.map(({ id, people }) => ({ id, people }))).toEqual([
      { id: 'harbour', people: 1 },
      { id: 'college', people: 0 },
    ]);
    expect(await listOrganizations(db, 1)).toHaveLength(1);
  });

  test('has nobody until somebody comes in', async () => {
    expect(await hasMembers(db, 'college')).toBe(false);
    await together(db, [addingMember(db, aMember({ id: 'ada-at-college', organizationId: 'college' }))]);
    expect(await hasMembers(db, 'college')).toBe(true);
  });
});

test('taking back an organisation’s invitations leaves those of others open', async () => {
  const ends = new Date(now.getTime() + 1000);
  const invitation = { inviterId: 'ada', email: null, role: 'administrator', createdAt: now, expiresAt: ends };
  const rows = [
    { id: 'first', organizationId: 'college', status: 'pending' },
    { id: 'other', organizationId: 'harbour', status: 'pending' },
  ] as const;
  await together(
    db,
    rows.map((row) => addingInvitation(db, { ...invitation, ...row, tokenHash: row.id, classId: null })),
  );
  await together(db, [withdrawingInvitations(db, 'college')]);
  expect(await findOpenInvitation(db, 'first', now)).toBeUndefined();
  expect((await findOpenInvitation(db, 'other', now))?.role).toBe('administrator');
});
