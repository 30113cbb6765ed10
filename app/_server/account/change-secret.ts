import { headers } from 'next/headers';
import { auth } from '@/app/_server/auth';
import { isAuthRefusal } from '@/app/_server/auth-refusal';
import { database } from '@/app/_server/database';
import { entryBy } from '@/app/_server/log-entry';
import type { SignedInPermit } from '@/app/_server/permit';
import { countTry, forgettingTries } from '@/app/_server/slow-down';
import { addingLogEntry } from '@/db/queries/log-entries';
import { removingResetLinks } from '@/db/queries/people';
import { changingActiveOrganization } from '@/db/queries/sessions';
import { together } from '@/db/together';
import { type SecretFault, secretFault } from '@/lib/accounts/secret-rules';

/** Why a secret was not changed, with what its sentence says. */
export interface SecretRefusal {
  error: SecretFault | 'present-secret' | 'sign-in-wait';
  values?: { minutes: number };
}

/**
 * Sets a person another password or PIN, where they know the present one, and ends all their sessions and open reset
 * links: this browser gets a new session, in the same organisation. Guessing at the present one is slowed like guessing
 * at the sign-in.
 *
 * @returns undefined when it is done.
 */
export async function changeSecret(
  permit: SignedInPermit,
  { presentSecret, secret }: { presentSecret: string; secret: string },
): Promise<SecretRefusal | undefined> {
  const { name, address } = permit.session;
  const fault = secretFault(secret, { name, address });
  if (fault) return { error: fault };
  const minutes = await countTry(`name:${address}`);
  if (minutes !== undefined) return { error: 'sign-in-wait', values: { minutes } };
  const token = await replaceSecret(presentSecret, secret);
  if (token === undefined) return { error: 'present-secret' };
  await settle(permit, token);
  return undefined;
}

/** @returns the token of the new session; undefined when the present secret is another one. */
async function replaceSecret(currentPassword: string, newPassword: string): Promise<string | undefined> {
  try {
    const { token } = await auth().api.changePassword({
      body: { currentPassword, newPassword, revokeOtherSessions: true },
      headers: await headers(),
    });
    return token ?? '';
  } catch (error) {
    if (isAuthRefusal(error)) return undefined;
    throw error;
  }
}

async function settle(permit: SignedInPermit, token: string): Promise<void> {
  const { personId, organizationId } = permit.session.actor;
  await together(database(), [
    changingActiveOrganization(database(), { userId: personId, token, organizationId }),
    removingResetLinks(database(), personId),
    forgettingTries(`name:${permit.session.address}`),
    addingLogEntry(database(), entryBy(permit, 'password-changed', { personId })),
  ]);
}
