import { addingLogEntry } from '@/db/queries/log-entries';
import { addingObservation, type NewObservation } from '@/db/queries/observations';
import { claimThen } from '@/db/together';
import type { RoleProfile } from '@/lib/readiness/profile';
import { database } from '../database';
import { settleSoon } from '../evidence/settle';
import { entryBy } from '../log-entry';
import type { NamedMember } from '../people/change-member';
import type { SignedInPermit } from '../permit';
import type { Observed } from './parse-observation';

/** Stores a hands-on check once, with the evidence that it owes and its line in the log. */
export async function storeObservation(
  permit: SignedInPermit,
  { id, person, profile, observed }: { id: string; person: NamedMember; profile: RoleProfile; observed: Observed },
): Promise<void> {
  const { organizationId, userId: learnerId } = person;
  const now = new Date();
  const row: NewObservation = {
    id,
    organizationId,
    learnerId,
    profileId: profile.id,
    observedBy: permit.session.actor.personId,
    writtenAt: now,
    ...observed,
  };
  const entry = entryBy(permit, 'observation-written', {
    personId: learnerId,
    details: { observation: id, profile: profile.id, unsafe: observed.unsafe },
  });
  const written = await claimThen(database(), addingObservation(database(), row), [addingLogEntry(database(), entry)]);
  if (written) await settleSoon(database(), { organizationId, learnerId });
}
