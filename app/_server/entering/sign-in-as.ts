import { headers } from 'next/headers';
import { addingLogEntry } from '@/db/queries/log-entries';
import { listMemberships } from '@/db/queries/members';
import { changingActiveOrganization } from '@/db/queries/sessions';
import { together } from '@/db/together';
import { auth } from '../auth';
import { isAuthRefusal } from '../auth-refusal';
import { database } from '../database';

/**
 * Signs a person in by what they proved to know: the browser gets a new session, whatever it came with.
 *
 * @param organizationId  Where they work from now on; left out for where they would anyhow.
 * @returns the person's id; undefined when name and secret do not go together.
 */
export async function signInAs(address: string, secret: string, organizationId?: string): Promise<string | undefined> {
  try {
    const { user, token } = await auth().api.signInEmail({
      body: { email: address, password: secret },
      headers: await headers(),
    });
    const working = { userId: user.id, token, organizationId: organizationId ?? null };
    if (organizationId) await together(database(), [changingActiveOrganization(database(), working)]);
    await logSignIn(user.id);
    return user.id;
  } catch (error) {
    if (isAuthRefusal(error)) return undefined;
    throw error;
  }
}

/** Every organisation that lets the person in sees it in its log. */
async function logSignIn(personId: string): Promise<void> {
  const memberships = await listMemberships(database(), personId);
  const at = new Date();
  await together(
    database(),
    memberships.map(({ organizationId }) =>
      addingLogEntry(database(), { at, organizationId, actorId: personId, event: 'signed-in', personId }),
    ),
  );
}
