import { mergingMembers } from '@/db/queries/leaving';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';
import type { MemberResource } from '@/lib/accounts/resource';
import { formatRoles, parseRoles } from '@/lib/accounts/roles';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import type { NamedMember } from './change-member';

/**
 * Gives all that the organisation holds of a double to the one who is kept, who has the roles of both from now on and signs
 * in as before. The double's own sign-in goes with them, unless another organisation has them too.
 *
 * @returns false, and nothing changed, when the double is the last administrator.
 */
export async function mergeMembers(
  permit: SignedInPermit,
  { organizationId, userId, role }: NamedMember,
  { personId: doubleId, roles }: MemberResource,
): Promise<boolean> {
  const db = database();
  const united = formatRoles([...parseRoles(role), ...roles]);
  const { claim, others } = mergingMembers(db, { organizationId, keptId: userId, doubleId, role: united });
  const entry = entryBy(permit, 'people-merged', { personId: userId, details: { double: doubleId } });
  return claimThen(db, claim, [...others, addingLogEntry(db, entry)]);
}
