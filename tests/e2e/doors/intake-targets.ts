import type { Db } from '@/db/client';
import { addingIntake } from '@/db/queries/intakes';
import { together } from '@/db/together';
import { aRoleProfile } from '../../support/competency-rows';

const at = new Date(Date.UTC(2026, 0, 1));

/** A new-hire check of somebody's that nobody has begun. */
export async function addIntakeOf(
  db: Db,
  { id, learnerId, organizationId }: { id: string; learnerId: string; organizationId: string },
): Promise<void> {
  const linkEndsAt = new Date(Date.UTC(2036, 0, 1));
  await together(db, [
    addingIntake(db, {
      ...{ id, learnerId, organizationId, profileId: 'helping-hand', profile: aRoleProfile() },
      ...{ createdBy: learnerId, createdAt: at, tokenHash: `hash of ${id}`, linkEndsAt },
    }),
  ]);
}
