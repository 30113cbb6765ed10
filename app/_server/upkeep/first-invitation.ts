import { addingInvitation, withdrawingInvitations } from '@/db/queries/invitations';
import { addingLogEntry } from '@/db/queries/log-entries';
import type { Statement } from '@/db/together';
import { database } from '../database';
import { env } from '../env';
import { hashToken, makeToken } from '../link-token';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import { randomId } from '../random-id';

const WEEK_MS = 7 * 24 * 60 * 60 * 1000;

/** What invites the first administrator of an organisation, and the link to hand on. Links made before open nothing any more. */
export function invitingFirstAdministrator(
  permit: SignedInPermit,
  organizationId: string,
): { link: string; statements: Statement[] } {
  const [id, token, at] = [randomId(), makeToken(), new Date()];
  const invitation = {
    id,
    organizationId,
    inviterId: permit.session.actor.personId,
    email: null,
    role: 'administrator',
    status: 'pending' as const,
    createdAt: at,
    expiresAt: new Date(at.getTime() + WEEK_MS),
    tokenHash: hashToken(token),
    classId: null,
  };
  const entry = { ...entryBy(permit, 'invitation-made', { details: { invitation: id } }), organizationId };
  return {
    link: `${env.FAULTWRIGHT_ORIGIN}/invited/${token}`,
    statements: [
      withdrawingInvitations(database(), organizationId),
      addingInvitation(database(), invitation),
      addingLogEntry(database(), entry),
    ],
  };
}
