import { beforeEach, expect, test } from 'vitest';
import type { Db } from '@/db/client';
import {
  changingActiveOrganization,
  listSessions,
  removingOtherSessions,
  removingSession,
} from '@/db/queries/sessions';
import { addingUser } from '@/db/queries/users';
import { sessions } from '@/db/schema';
import { together } from '@/db/together';
import { aUser } from '../support/people-rows';
import { testDatabase } from '../support/test-database';

const now = new Date(Date.UTC(2026, 0, 2));
const hours = (n: number) => new Date(now.getTime() + n * 3_600_000);

function aSession(changes: Partial<typeof sessions.$inferInsert> = {}): typeof sessions.$inferInsert {
  return {
    id: 'at-desk',
    token: `token-${changes.id ?? 'at-desk'}`,
    userId: 'ada',
    expiresAt: hours(24),
    createdAt: hours(-3),
    updatedAt: hours(-3),
    ...changes,
  };
}

let db: Db;

beforeEach(async () => {
  db = testDatabase();
  await together(db, [addingUser(db, aUser()), addingUser(db, aUser({ id: 'ben', email: 'ben@harbour.invalid' }))]);
  await db
    .insert(sessions)
    .values([
      aSession(),
      aSession({ id: 'on-phone', updatedAt: hours(-1) }),
      aSession({ id: 'long-ago', expiresAt: hours(-1) }),
      aSession({ id: 'of-ben', userId: 'ben' }),
    ]);
});

const idsOf = async (userId: string) => (await listSessions(db, userId, now, 10)).map(({ id }) => id);

test('a person sees their own sessions that have not ended, the one used last first, and no token', async () => {
  expect(await idsOf('ada')).toEqual(['on-phone', 'at-desk']);
  expect(JSON.stringify(await listSessions(db, 'ada', now, 10))).not.toContain('token');
  expect(await listSessions(db, 'ada', now, 1)).toHaveLength(1);
});

test('a person ends a session of their own and nobody else’s', async () => {
  expect(removingSession(db, { userId: 'ada', sessionId: 'of-ben' }).run().changes).toBe(0);
  expect(removingSession(db, { userId: 'ada', sessionId: 'on-phone' }).run().changes).toBe(1);
  expect(await idsOf('ada')).toEqual(['at-desk']);
  expect(await idsOf('ben')).toEqual(['of-ben']);
});

test('ending all other sessions leaves the one and everybody else’s', async () => {
  await together(db, [removingOtherSessions(db, { userId: 'ada', sessionId: 'at-desk' })]);
  expect(await idsOf('ada')).toEqual(['at-desk']);
  expect(await idsOf('ben')).toEqual(['of-ben']);
});

test('the organisation being worked in is set for a session of the person’s own alone', async () => {
  const chosen = { token: 'token-of-ben', organizationId: 'harbour' };
  expect(changingActiveOrganization(db, { userId: 'ada', ...chosen }).run().changes).toBe(0);
  expect(changingActiveOrganization(db, { userId: 'ben', ...chosen }).run().changes).toBe(1);
  const [session] = await listSessions(db, 'ben', now, 1);
  expect(session?.activeOrganizationId).toBe('harbour');
});
