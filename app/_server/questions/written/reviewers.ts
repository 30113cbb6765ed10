import { listNamesHolding, type Named } from '@/db/queries/names';
import { can } from '@/lib/accounts/can';
import { type Role, roles } from '@/lib/accounts/roles';
import { database } from '../../database';

/** People of an organisation other than one who may approve questions, by name. */
export async function listReviewers(organizationId: string, writerId: string): Promise<Named[]> {
  const reviewing = roles.filter((role) => mayReview(role, organizationId));
  const people = await listNamesHolding(database(), organizationId, reviewing);
  return people.filter(({ id }) => id !== writerId);
}

function mayReview(role: Role, organizationId: string): boolean {
  const actor = { personId: '', organizationId, organizationIds: [organizationId], roles: [role], keeper: false };
  return can(actor, 'questions.review', { kind: 'organization', organizationId });
}
