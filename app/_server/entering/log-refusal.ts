import { addingLogEntry } from '@/db/queries/log-entries';
import { listMemberships } from '@/db/queries/members';
import { findUserByAddress } from '@/db/queries/users';
import { together } from '@/db/together';
import { database } from '../database';

/** Tells the organisations of whoever goes by an address that somebody was refused under that name. */
export async function logRefusal(address: string): Promise<void> {
  const user = await findUserByAddress(database(), address);
  if (!user) return;
  const at = new Date();
  const entries = (await listMemberships(database(), user.id)).map(({ organizationId }) =>
    addingLogEntry(database(), { at, organizationId, actorId: null, event: 'sign-in-refused', personId: user.id }),
  );
  await together(database(), entries);
}
