import { addingLogEntry } from '@/db/queries/log-entries';
import {
  handingInvitations,
  removingMember,
  removingPlaces,
  removingUserWithoutPlace,
  removingWork,
} from '@/db/queries/people';
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
  return claimThen(db, removingMember(db, person), [
    ...removingWork(db, person),
    removingPlaces(db, person),
    handingInvitations(db, person, permit.session.actor.personId),
    ...removingUserWithoutPlace(db, userId),
    forgettingTries(`name:${address}`),
    addingLogEntry(db, entryBy(permit, 'person-erased', { personId: userId })),
  ]);
}
