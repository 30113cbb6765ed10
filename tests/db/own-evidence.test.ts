import { expect, test } from 'vitest';
import { readEvidence, readOwnEvidence } from '@/app/_server/readiness/read-evidence';
import { addingOrganization } from '@/db/queries/organizations';
import { addingSitting } from '@/db/queries/sittings';
import { addingUser } from '@/db/queries/users';
import { intakes } from '@/db/schema';
import { together } from '@/db/together';
import { aRoleProfile } from '../support/competency-rows';
import { addShown } from '../support/evidence-rows';
import { testDatabase } from '../support/test-database';

const whose = { learnerId: 'bo', organizationId: 'yard' };
const at = new Date();
const profile = aRoleProfile();

// Somebody may learn and answer for others in one organisation, and would otherwise read their own marks off the board.
test('whoever looks at what is said of themselves sees nothing of an open new-hire check, and others do', async () => {
  const db = testDatabase();
  const sitting = { id: `${whose.learnerId}-filtration`, key: 'a', mode: 'check' as const, topics: ['filtration'] };
  await together(db, [
    addingOrganization(db, { id: 'yard', name: 'Yard', slug: 'yard', createdAt: at }),
    addingUser(db, { id: 'bo', name: 'Bo', email: 'bo@yard.invalid', createdAt: at, updatedAt: at }),
    addingSitting(db, { ...sitting, ...whose, createdAt: at }),
  ]);
  const intake = { id: 'intake', profileId: profile.id, profile, createdBy: 'lead', createdAt: at, linkEndsAt: at };
  await db.insert(intakes).values({ ...intake, ...whose, startedAt: at, sittingId: sitting.id });
  await addShown(db, whose, { topics: [{ topic: 'filtration', right: 8, wrong: 0 }], cases: [0, 1] });

  const others = (await readEvidence(db, whose, profile)).get(whose.learnerId);
  expect(others?.tallies.get('filtration')?.count).toBe(8);
  const own = await readOwnEvidence(db, whose, at);
  expect(own.tallies.get('filtration')).toBeUndefined();
  expect(own.safety.map(({ events }) => events).sort()).toEqual([0, 1]);

  await db.update(intakes).set({ finishedAt: at });
  expect((await readOwnEvidence(db, whose, at)).tallies.get('filtration')).toEqual(others?.tallies.get('filtration'));
});
