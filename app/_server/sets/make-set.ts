import { revalidatePath } from 'next/cache';
import { addingLogEntry } from '@/db/queries/log-entries';
import { addingFirstVersion, addingSet } from '@/db/queries/sets';
import { claimThen } from '@/db/together';
import type { SetBody } from '@/lib/sets/set-body';
import { database } from '../database';
import { entryBy } from '../log-entry';
import { organizationOf, type SignedInPermit } from '../permit';
import { randomId } from '../random-id';

/** Makes a set that nobody else sees yet; once, however often it is asked for under one id. */
export async function makeSet(permit: SignedInPermit, setId: string, body: SetBody): Promise<void> {
  const [createdBy, at] = [permit.session.actor.personId, new Date()];
  const made = { id: setId, organizationId: organizationOf(permit), createdBy, createdAt: at };
  const entry = entryBy(permit, 'set-made', { details: { set: setId } });
  await claimThen(database(), addingSet(database(), made), [
    addingFirstVersion(database(), { id: randomId(), setId, body, writtenBy: createdBy, at }),
    addingLogEntry(database(), entry),
  ]);
  revalidatePath('/sets');
}
