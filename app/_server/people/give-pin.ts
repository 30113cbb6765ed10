import { revalidatePath } from 'next/cache';
import { addingLogEntry } from '@/db/queries/log-entries';
import { removingResetLinks } from '@/db/queries/people';
import { removingSessions } from '@/db/queries/sessions';
import { addingCredential, changingCredential, hasCredential } from '@/db/queries/users';
import { together } from '@/db/together';
import { database } from '../database';
import { hashSecret } from '../hash-secret';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import { forgettingTries } from '../slow-down';
import type { NamedMember } from './change-member';

/** Gives somebody a PIN, ends their sessions and open links, and forgets what they were refused. */
export async function givePin(permit: SignedInPermit, { userId, address }: NamedMember, pin: string): Promise<void> {
  const db = database();
  const secret = { userId, hash: await hashSecret(pin), at: new Date() };
  await together(db, [
    (await hasCredential(db, userId)) ? changingCredential(db, secret) : addingCredential(db, secret),
    removingSessions(db, userId),
    removingResetLinks(db, userId),
    forgettingTries(`name:${address}`),
    addingLogEntry(db, entryBy(permit, 'pin-set', { personId: userId })),
  ]);
  revalidatePath(`/people/${userId}`);
}
