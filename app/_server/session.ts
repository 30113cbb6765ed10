import { headers } from 'next/headers';
import { cache } from 'react';
import { listMemberships, type Membership } from '@/db/queries/members';
import type { Actor } from '@/lib/accounts/actor';
import { parseRoles } from '@/lib/accounts/roles';
import { auth } from './auth';
import { database } from './database';

/** Somebody signed in. */
export interface Session {
  id: string;
  /** What the cookie carries; never shown. */
  token: string;
  name: string;
  /** As stored; lib/accounts/sign-in-name.ts shows it. */
  address: string;
  actor: Actor;
  /** Every organisation that lets this person in. */
  memberships: readonly Membership[];
  /** The one being worked in. */
  organization: Membership | undefined;
}

/**
 * Who is asking; null for somebody who is not signed in. Read anew for every request, so that what was taken away a
 * moment ago is gone.
 */
export const readSession = cache(async (): Promise<Session | null> => {
  const found = await auth().api.getSession({ headers: await headers() });
  if (!found) return null;
  const { session, user } = found;
  const memberships = await listMemberships(database(), user.id);
  const organization = memberships.find((one) => one.organizationId === session.activeOrganizationId) ?? memberships[0];
  return {
    id: session.id,
    token: session.token,
    name: user.name,
    address: user.email,
    memberships,
    organization,
    actor: {
      personId: user.id,
      organizationId: organization?.organizationId ?? null,
      roles: organization ? parseRoles(organization.role) : [],
      organizationIds: memberships.map((one) => one.organizationId),
      keeper: Boolean(user.keeper),
    },
  };
});
