import { adoptingAttempts } from '@/db/queries/attempts';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingFirstOrganization } from '@/db/queries/organizations';
import { claimThen } from '@/db/together';
import { database } from '../database';
import { hashSecret } from '../hash-secret';
import { addingPerson } from '../people/adding-person';
import { randomId } from '../random-id';
import { forgetSetUpToken } from '../set-up-token';
import type { Newcomer } from './newcomer';

/** Whoever practised before there were accounts. */
const BEFORE_ACCOUNTS = 'local';

/**
 * Makes the first organisation, and its administrator, who keeps the installation too and takes over what was practised
 * here before there were accounts.
 *
 * @returns whether it did; false once there are people.
 */
export async function setUpInstallation(
  { name, address, secret }: Newcomer,
  organization: { name: string; slug: string },
): Promise<boolean> {
  const db = database();
  const hash = await hashSecret(secret);
  const at = new Date();
  const organizationId = randomId();
  const id = randomId();
  const done = await claimThen(
    db,
    addingFirstOrganization(db, { ...organization, id: organizationId, createdAt: at }),
    [
      ...addingPerson({ id, name, address, hash, organizationId, roles: ['administrator'], keeper: true, at }),
      adoptingAttempts(db, BEFORE_ACCOUNTS, { learnerId: id, organizationId }),
      addingLogEntry(db, { at, organizationId, actorId: id, event: 'installation-set-up', personId: id }),
    ],
  );
  if (done) forgetSetUpToken();
  return done;
}
