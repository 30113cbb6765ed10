import { erasingMember } from '@/db/queries/leaving';
import { addingLogEntry } from '@/db/queries/log-entries';
import { claimThen } from '@/db/together';
import { database } from '../database';
import { entryBy } from '../log-entry';
import type { SignedInPermit } from '../permit';
import { forgettingTries } from '../slow-down';
import type { NamedMember } from './change-member';

/**
 * Removes all that the organisation holds of somebody, and them where no other has them. The log keeps an id that leads to
 * nobody any more.
 *
 * @returns false, and nothing changed, when they are the last administrator.
 */
export async function eraseMember(permit: SignedInPermit, person: NamedMember): Promise<boolean> {
  const db = database();
  const { userId, address } = person;
  const { claim, others } = erasingMember(db, person, permit.session.actor.personId);
  return claimThen(db, claim, [
    ...others,
    forgettingTries(`name:${address}`),
    addingLogEntry(db, entryBy(permit, 'person-erased', { personId: userId })),
  ]);
}
