import { findMember } from '@/db/queries/members';
import { parseRoles } from '@/lib/accounts/roles';
import { database } from '../database';

/** Whether an organisation lets a person in, as a learner among other things. */
export async function learnsIn(organizationId: string, personId: string): Promise<boolean> {
  const member = await findMember(database(), organizationId, personId);
  return member !== undefined && !member.deactivatedAt && parseRoles(member.role).includes('learner');
}
