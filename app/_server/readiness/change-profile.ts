import { revalidatePath } from 'next/cache';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingProfile } from '@/db/queries/role-profiles';
import { claimThen } from '@/db/together';
import type { LogEvent } from '@/lib/accounts/log-events';
import type { RoleProfile } from '@/lib/readiness/profile';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { randomId } from '../random-id';

/**
 * Writes the next version of a profile for the organisation being worked in, and tells the log.
 *
 * @param body  Null where the organisation is to do without it.
 * @returns false where somebody else wrote that version meanwhile.
 */
export async function changeProfile(
  permit: SignedInPermit,
  { id: profileId, version }: Pick<RoleProfile, 'id' | 'version'>,
  body: RoleProfile | null,
): Promise<boolean> {
  const event: LogEvent = body ? 'profile-changed' : 'profile-retired';
  const row = {
    id: randomId(),
    organizationId: organizationOf(permit),
    profileId,
    version,
    body,
    changedBy: permit.session.actor.personId,
    changedAt: new Date(),
  };
  const entry = entryBy(permit, event, { details: { profile: profileId, version } });
  const done = await claimThen(database(), addingProfile(database(), row), [addingLogEntry(database(), entry)]);
  revalidatePath('/profiles');
  revalidatePath(`/profiles/${profileId}`);
  return done;
}
