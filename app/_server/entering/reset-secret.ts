import { addingLogEntry } from '@/db/queries/log-entries';
import { listMemberships } from '@/db/queries/members';
import { removingResetLinks } from '@/db/queries/people';
import { findUser, type User } from '@/db/queries/users';
import { together } from '@/db/together';
import { type SecretFault, secretFault } from '@/lib/accounts/secret-rules';
import { auth } from '../auth';
import { isAuthRefusal } from '../auth-refusal';
import { database } from '../database';
import { forgettingTries } from '../slow-down';

/** Whose password or PIN a link sets anew; undefined when it was used, is too old, or never was. */
export async function readReset(token: string): Promise<User | undefined> {
  const { internalAdapter } = await auth().$context;
  const found = await internalAdapter.findVerificationValue(`reset-password:${token}`);
  if (!found || found.expiresAt < new Date()) return undefined;
  return findUser(database(), found.value);
}

/** Sets a password or PIN anew, and ends every session and every other open link. Undefined when it is done. */
export async function resetSecret(token: string, secret: string): Promise<SecretFault | 'link-dead' | undefined> {
  const person = await readReset(token);
  if (!person) return 'link-dead';
  const fault = secretFault(secret, { name: person.name, address: person.email });
  if (fault) return fault;
  try {
    await auth().api.resetPassword({ body: { token, newPassword: secret } });
  } catch (error) {
    // Another press of the button came first.
    if (isAuthRefusal(error)) return 'link-dead';
    throw error;
  }
  await settle(person);
  return undefined;
}

async function settle({ id, email }: User): Promise<void> {
  const at = new Date();
  const memberships = await listMemberships(database(), id);
  await together(database(), [
    removingResetLinks(database(), id),
    forgettingTries(`name:${email}`),
    ...memberships.map(({ organizationId }) =>
      addingLogEntry(database(), { at, organizationId, actorId: id, event: 'reset-link-used', personId: id }),
    ),
  ]);
}
