import { addingClassPlace } from '@/db/queries/classes';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingMember, changingRole, findMember } from '@/db/queries/members';
import { findUserByAddress } from '@/db/queries/users';
import { claimThen, type Statement, together } from '@/db/together';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';
import { formatRoles, parseRoles, type Role } from '@/lib/accounts/roles';
import { database } from '../database';
import { hashSecret } from '../hash-secret';
import { addingPerson } from '../people/adding-person';
import { randomId } from '../random-id';
import type { Newcomer } from './newcomer';

/** Where a link or a code lets somebody in. */
export interface Entry {
  organizationId: string;
  roles: readonly Role[];
  classId: string | null;
  event: LogEvent;
  details: LogDetails;
  /** What may happen only once, such as using up an invitation; nothing else happens where it does not. */
  claim?: Statement;
}

export type EntryProblem = 'address-taken' | 'not-let-in' | 'link-dead';

/** Lets in somebody who was not known here, with what they sign in with from now on. */
export async function enterAsNew(
  { name, address, secret }: Newcomer,
  entry: Entry,
): Promise<{ personId: string } | { error: EntryProblem }> {
  if (await findUserByAddress(database(), address)) return { error: 'address-taken' };
  const { organizationId, roles, classId } = entry;
  const hash = await hashSecret(secret);
  const id = randomId();
  const at = new Date();
  const person = { id, name, address, hash, organizationId, roles, classId: classId ?? undefined, at };
  return write(entry, id, at, addingPerson(person));
}

/** Lets in somebody who is signed in already. What they were in the organisation before, they stay. */
export async function enterAsSelf(
  personId: string,
  entry: Entry,
): Promise<{ personId: string } | { error: EntryProblem }> {
  const { organizationId, classId } = entry;
  const db = database();
  const member = await findMember(db, organizationId, personId);
  if (member?.deactivatedAt) return { error: 'not-let-in' };
  const at = new Date();
  const role = formatRoles([...parseRoles(member?.role ?? ''), ...entry.roles]);
  return write(entry, personId, at, [
    member
      ? changingRole(db, { organizationId, userId: personId, role })
      : addingMember(db, { id: randomId(), organizationId, userId: personId, role, createdAt: at }),
    ...(classId ? [addingClassPlace(db, { classId, userId: personId, joinedAt: at })] : []),
  ]);
}

async function write(
  { claim, organizationId, event, details }: Entry,
  personId: string,
  at: Date,
  statements: readonly Statement[],
): Promise<{ personId: string } | { error: EntryProblem }> {
  const entry = addingLogEntry(database(), { at, organizationId, actorId: personId, event, personId, details });
  if (!claim) await together(database(), [...statements, entry]);
  else if (!(await claimThen(database(), claim, [...statements, entry]))) return { error: 'link-dead' };
  return { personId };
}
