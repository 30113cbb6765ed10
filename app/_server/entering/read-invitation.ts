import { acceptingInvitation, findOpenInvitation, type OpenInvitation } from '@/db/queries/invitations';
import { parseRoles } from '@/lib/accounts/roles';
import { database } from '../database';
import { hashToken } from '../link-token';
import type { Entry } from './enter';

/** The invitation that a link carries; undefined when it was used or withdrawn, is too old, or never was. */
export async function readInvitation(token: string): Promise<OpenInvitation | undefined> {
  return findOpenInvitation(database(), hashToken(token), new Date());
}

/** What an invitation lets in to, and that it does so once. */
export function entryByInvitation({ id, organizationId, role, classId }: OpenInvitation): Entry {
  return {
    organizationId,
    roles: parseRoles(role),
    classId,
    event: 'invitation-used',
    details: { invitation: id },
    claim: acceptingInvitation(database(), id, new Date()),
  };
}
