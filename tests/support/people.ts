import { createHmac, randomBytes } from 'node:crypto';
import { hashPassword } from 'better-auth/crypto';
import type { Db } from '@/db/client';
import { addingMember } from '@/db/queries/members';
import { addingOrganization } from '@/db/queries/organizations';
import { addingCredential, addingUser } from '@/db/queries/users';
import { sessions } from '@/db/schema';
import { together } from '@/db/together';

/** Organisations of the browser tests. */
export const harbour = { id: 'test-harbour-id', name: 'Test Harbour', slug: 'test-harbour' };
export const college = { id: 'test-college-id', name: 'Test College', slug: 'test-college' };

interface Person {
  id: string;
  name: string;
  /** As stored. */
  address: string;
  /** As stored, by organisation. */
  roles: Readonly<Record<string, string>>;
  keeper?: boolean;
  deactivated?: boolean;
}

/** Whoever a test may be. */
export const people = {
  learner: {
    id: 'test-learner',
    name: 'Lea Learner',
    address: 'lea@test-harbour.invalid',
    roles: { [harbour.id]: 'learner' },
  },
  secondLearner: {
    id: 'test-learner-2',
    name: 'Luc Learner',
    address: 'luc@test-harbour.invalid',
    roles: { [harbour.id]: 'learner' },
  },
  instructor: {
    id: 'test-instructor',
    name: 'Ira Instructor',
    address: 'ira@harbour.example',
    roles: { [harbour.id]: 'instructor' },
  },
  shopLead: {
    id: 'test-shop-lead',
    name: 'Sol Shoplead',
    address: 'sol@harbour.example',
    roles: { [harbour.id]: 'shop-lead' },
  },
  administrator: {
    id: 'test-administrator',
    name: 'Ada Admin',
    address: 'ada@harbour.example',
    roles: { [harbour.id]: 'administrator' },
  },
  keeper: {
    id: 'test-keeper',
    name: 'Kim Keeper',
    address: 'kim@harbour.example',
    roles: { [harbour.id]: 'administrator' },
    keeper: true,
  },
  /** Learns here, teaches there. */
  both: {
    id: 'test-both',
    name: 'Bo Both',
    address: 'bo@harbour.example',
    roles: { [harbour.id]: 'learner', [college.id]: 'instructor' },
  },
  stranger: {
    id: 'test-stranger',
    name: 'Sam Stranger',
    address: 'sam@test-college.invalid',
    roles: { [college.id]: 'learner' },
  },
  otherAdministrator: {
    id: 'test-other-administrator',
    name: 'Olu Other',
    address: 'olu@college.example',
    roles: { [college.id]: 'administrator' },
  },
  closedOut: {
    id: 'test-closed-out',
    name: 'Cas Closed',
    address: 'cas@test-harbour.invalid',
    roles: { [harbour.id]: 'learner' },
    deactivated: true,
  },
} as const satisfies Record<string, Person>;

export type PersonKey = keyof typeof people;

/** What everybody above signs in with. */
export const PASSWORD = 'harbour lights 4711';

/** Puts the organisations and all people into an empty database. */
export async function makePeople(db: Db): Promise<void> {
  const at = new Date();
  const hash = await hashPassword(PASSWORD);
  const organizations = [harbour, college].map((one) => addingOrganization(db, { ...one, createdAt: at }));
  await together(db, [
    ...organizations,
    ...Object.values(people).flatMap((one) => addingTestPerson(db, one, hash, at)),
  ]);
}

function addingTestPerson(db: Db, { id, name, address, roles, keeper, deactivated }: Person, hash: string, at: Date) {
  return [
    addingUser(db, { id, name, email: address, keeper: keeper ?? false, createdAt: at, updatedAt: at }),
    addingCredential(db, { userId: id, hash, at }),
    ...Object.entries(roles).map(([organizationId, role]) =>
      addingMember(db, {
        id: `${id}-${organizationId}`,
        organizationId,
        userId: id,
        role,
        createdAt: at,
        deactivatedAt: deactivated ? at : null,
      }),
    ),
  ];
}

/** Signs cookies on the servers that tests start. */
export const TEST_SECRET = 'a secret of the browser tests, 40 characters';

export const SESSION_COOKIE = 'faultwright.session_token';

/** A new session of a person's, as the value of its cookie. */
export async function newSession(db: Db, userId: string, organizationId: string | null = null): Promise<string> {
  const token = randomBytes(24).toString('base64url');
  const at = new Date();
  await db.insert(sessions).values({
    id: randomBytes(10).toString('hex'),
    token,
    userId,
    activeOrganizationId: organizationId,
    expiresAt: new Date(at.getTime() + 86_400_000),
    createdAt: at,
    updatedAt: at,
  });
  return signedCookie(token);
}

/** The form in which a session's token travels: with a signature that the server checks. */
export function signedCookie(token: string, secret = TEST_SECRET): string {
  return encodeURIComponent(`${token}.${createHmac('sha256', secret).update(token).digest('base64')}`);
}
