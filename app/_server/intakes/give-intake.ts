import { addingIntake } from '@/db/queries/intakes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listTaken } from '@/db/queries/users';
import { type Statement, together } from '@/db/together';
import { formatUserName, isHandle, shownName, storedAddress } from '@/lib/accounts/sign-in-name';
import type { RoleProfile } from '@/lib/readiness/profile';
import { database } from '../database';
import { env } from '../env';
import { hashSecret } from '../hash-secret';
import { hashToken, makeToken } from '../link-token';
import { entryBy } from '../log-entry';
import { addingPerson } from '../people/adding-person';
import { newPin } from '../people/new-pin';
import { organizationOf, type SignedInPermit } from '../permit';
import { randomId } from '../random-id';

export interface IntakeWish {
  /** A member, or the name of somebody new. */
  of: { personId: string } | { name: string };
  profile: RoleProfile;
  /** Share of the minutes on top. */
  extraTime: number;
  linkDays: number;
}

/** What to hand over, shown this once. */
export interface IntakeGiven {
  link: string;
  /** Of somebody new: what they sign in with. */
  signIn?: { name: string; pin: string };
}

const DAY = 86_400_000;

/** Gives a new-hire check. Somebody new becomes a learner of the organisation, with a user name and a PIN. */
export async function giveIntake(permit: SignedInPermit, wish: IntakeWish): Promise<IntakeGiven> {
  const db = database();
  const [organizationId, at, token] = [organizationOf(permit), new Date(), makeToken()];
  const person =
    'personId' in wish.of ? { id: wish.of.personId, adding: [] } : await newPerson(permit, wish.of.name, at);
  const id = randomId();
  await together(db, [
    ...person.adding,
    addingIntake(db, {
      ...{ id, organizationId, learnerId: person.id, profileId: wish.profile.id, profile: wish.profile },
      ...{ createdBy: permit.session.actor.personId, createdAt: at, extraTime: wish.extraTime },
      ...{ tokenHash: hashToken(token), linkEndsAt: new Date(at.getTime() + wish.linkDays * DAY) },
    }),
    addingLogEntry(
      db,
      entryBy(permit, 'intake-given', { personId: person.id, details: { intake: id, profile: wish.profile.id } }),
    ),
  ]);
  return { link: `${env.FAULTWRIGHT_ORIGIN}/start/${token}`, ...('signIn' in person && { signIn: person.signIn }) };
}

interface Added {
  id: string;
  adding: Statement[];
  signIn: { name: string; pin: string };
}

async function newPerson(permit: SignedInPermit, name: string, at: Date): Promise<Added> {
  const pin = newPin();
  const hash = await hashSecret(pin);
  const address = await freeAddress(name, permit.session.organization?.slug ?? '');
  const id = randomId();
  const person = { id, name, address, hash, organizationId: organizationOf(permit), roles: ['learner'] as const, at };
  const added = entryBy(permit, 'person-added', { personId: id, details: { roles: ['learner'] } });
  return {
    id,
    adding: [...addingPerson(person), addingLogEntry(database(), added)],
    signIn: { name: shownName(address), pin },
  };
}

/** A user name after somebody's name that nobody has yet. */
async function freeAddress(name: string, slug: string): Promise<string> {
  const handle = handleFrom(name);
  const numbered = Array.from({ length: 50 }, (_, index) => (index === 0 ? handle : `${handle}-${index + 1}`));
  const addresses = [...numbered, `${handle}-${randomId().slice(0, 6)}`].map((one) =>
    storedAddress(formatUserName({ handle: one, slug })),
  );
  const taken = new Set(await listTaken(database(), addresses));
  const free = addresses.find((address) => !taken.has(address));
  if (!free) throw new Error('No user name is free');
  return free;
}

/** Room for a number behind it. */
const LONGEST_HANDLE = 24;

function handleFrom(name: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_HANDLE)
    .replace(/^-+|-+$/g, '');
  return isHandle(plain) ? plain : 'new-hire';
}
