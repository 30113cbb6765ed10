import type { Db } from '@/db/client';
import { observations, signOffs } from '@/db/schema';
import { aRoleProfile, aStanding } from '../../support/competency-rows';

interface Whose {
  id: string;
  learnerId: string;
  organizationId: string;
}

const at = new Date(Date.UTC(2026, 0, 1));
const [observedBy, signedBy] = ['somebody', 'somebody'];

export async function addObservation(db: Db, whose: Whose): Promise<void> {
  const rest = { profileId: null, items: [], unsafe: false, comment: 'Seen', observedAt: at, writtenAt: at };
  await db.insert(observations).values({ ...whose, ...rest, observedBy });
}

export async function addSignOff(db: Db, whose: Whose): Promise<void> {
  const profile = aRoleProfile();
  const rest = { profileId: profile.id, profile, standing: aStanding(), comment: 'Sound', signedAt: at, endsAt: at };
  await db.insert(signOffs).values({ ...whose, ...rest, signedBy });
}
