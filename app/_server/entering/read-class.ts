import { findClassByJoinCode } from '@/db/queries/classes';
import { findOrganization } from '@/db/queries/organizations';
import { parseJoinCode } from '@/lib/accounts/join-code';
import { database } from '../database';
import type { Entry } from './enter';

/** A class that a code opens, and whose it is. */
export interface OpenClass {
  id: string;
  name: string;
  organization: { id: string; name: string; slug: string };
}

/** The class that a code stands for; undefined when it is closed, the code too old, or not one at all. */
export async function readClass(typed: string): Promise<OpenClass | undefined> {
  const code = parseJoinCode(typed);
  const found = code && (await findClassByJoinCode(database(), code, new Date()));
  if (!found) return undefined;
  const organization = await findOrganization(database(), found.organizationId);
  return organization && { id: found.id, name: found.name, organization };
}

/** What a class lets in to: it, and its organisation as a learner. */
export function entryByClass({ id, organization }: OpenClass): Entry {
  return {
    organizationId: organization.id,
    roles: ['learner'],
    classId: id,
    event: 'class-joined',
    details: { class: id },
  };
}
