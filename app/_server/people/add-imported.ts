import { after } from 'next/server';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listTaken } from '@/db/queries/users';
import { together } from '@/db/together';
import { takesMail } from '@/lib/accounts/sign-in-name';
import { database } from '../database';
import { hashSecret } from '../hash-secret';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { randomId } from '../random-id';
import { addingPerson } from './adding-person';
import { newPin } from './new-pin';
import type { ImportRow } from './parse-import';
import { FIRST_LINK_HOURS, resetLink } from './reset-link';
import { sendLink } from './send-link';

/** Somebody who is in now, and what to hand to them. */
export interface Imported {
  name: string;
  /** As stored. */
  address: string;
  /** A PIN, or a link to set a password. */
  secret: string;
}

/** Adds all people of a list, or none. @returns undefined when somebody came in between who signs in like one of them. */
export async function addImported(permit: SignedInPermit, rows: readonly ImportRow[]): Promise<Imported[] | undefined> {
  const made = await inTwos(rows, withSecret);
  const addresses = rows.map(({ address }) => address);
  // Hashing takes its time; from here on everything happens at once.
  if ((await listTaken(database(), addresses)).length > 0) return undefined;
  const [organizationId, at] = [organizationOf(permit), new Date()];
  await together(database(), [
    ...made.flatMap((person) => [
      ...addingPerson({ ...person, organizationId, at }),
      addingLogEntry(
        database(),
        entryBy(permit, 'person-added', { personId: person.id, details: { roles: person.roles } }),
      ),
    ]),
    addingLogEntry(database(), entryBy(permit, 'people-imported', { details: { count: made.length } })),
  ]);
  const imported = await inTwos(made, handed);
  // A slow mail server is not to keep the PINs from being shown.
  after(() => inTwos(imported, ({ address, secret }) => sendLink('invitation', address, secret)));
  return imported;
}

/** Whoever signs in meanwhile is not to wait behind the PINs of a whole list. */
async function inTwos<T, R>(all: readonly T[], act: (one: T) => Promise<R>): Promise<R[]> {
  const done: R[] = [];
  for (let i = 0; i < all.length; i += 2) done.push(...(await Promise.all(all.slice(i, i + 2).map(act))));
  return done;
}

type Made = ImportRow & { id: string; pin?: string; hash?: string };

async function withSecret(row: ImportRow): Promise<Made> {
  const id = randomId();
  if (takesMail(row.address)) return { ...row, id };
  const pin = newPin();
  return { ...row, id, pin, hash: await hashSecret(pin) };
}

async function handed({ id, name, address, pin }: Made): Promise<Imported> {
  if (pin) return { name, address, secret: pin };
  return { name, address, secret: await resetLink(id, FIRST_LINK_HOURS) };
}
