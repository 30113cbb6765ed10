import { revalidatePath } from 'next/cache';
import type { ActResult } from '@/app/_ui/act-result';
import { addingLogEntry } from '@/db/queries/log-entries';
import { findMember } from '@/db/queries/members';
import { findUser } from '@/db/queries/users';
import { claimThen, type Statement, together } from '@/db/together';
import type { LogDetails, LogEvent } from '@/lib/accounts/log-events';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import { problem } from '../problems';

/** A person as a member of the organisation being worked in. */
export interface NamedMember {
  organizationId: string;
  userId: string;
  name: string;
  /** As stored. */
  address: string;
  /** As stored. */
  role: string;
  deactivatedAt: Date | null;
  erasureAskedAt: Date | null;
}

/** The member that a door let in to. @throws when they are gone since. */
export async function memberNamed({ resource }: Pick<SignedInPermit, 'resource'>): Promise<NamedMember> {
  if (resource.kind !== 'member') throw new Error(`A door to a member let in to ${resource.kind}`);
  const { organizationId, personId } = resource;
  const member = await findMember(database(), organizationId, personId);
  const user = await findUser(database(), personId);
  if (!member || !user) throw new Error('The member that the door let in to is gone');
  const { role, deactivatedAt, erasureAskedAt } = member;
  return {
    organizationId,
    userId: personId,
    name: user.name,
    address: user.email,
    role,
    deactivatedAt,
    erasureAskedAt,
  };
}

/** Changes a member, and tells the log of it. A change that may not be made to the last administrator is refused. */
export async function changeMember(
  permit: SignedInPermit,
  event: LogEvent,
  change?: Statement,
  details: LogDetails = {},
): Promise<ActResult> {
  const { userId: personId } = await memberNamed(permit);
  const entry = addingLogEntry(database(), entryBy(permit, event, { personId, details }));
  if (!change) await together(database(), [entry]);
  else if (!(await claimThen(database(), change, [entry]))) return { error: await problem('last-administrator') };
  revalidatePath(`/people/${personId}`);
  return { done: true };
}
