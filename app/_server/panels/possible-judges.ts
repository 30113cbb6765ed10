import { listPeople } from '@/db/queries/people';
import { parseRoles } from '@/lib/accounts/roles';
import { database } from '../database';

/** More than an organisation has on its staff. */
const MOST = 1000;

/** Who may judge: staff who do not learn here themselves, for judges see tasks with their answers. */
export async function possibleJudges(organizationId: string): Promise<{ id: string; name: string }[]> {
  const people = await listPeople(database(), organizationId, {}, MOST);
  return people.filter(({ role, deactivatedAt }) => {
    const roles = parseRoles(role);
    return deactivatedAt === null && roles.length > 0 && !roles.includes('learner');
  });
}
