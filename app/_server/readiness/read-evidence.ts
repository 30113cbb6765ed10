import type { Db } from '@/db/client';
import { findOrganization } from '@/db/queries/organizations';
import { listSafetyOf, listStatesOn, type WhoseStates } from '@/db/queries/readiness';
import { recentCasesOf, statesOf } from '@/lib/competency/states';
import type { Tally } from '@/lib/competency/tally';
import { fromBytes } from '@/lib/competency/tally-bytes';
import { noEvidence, type PersonEvidence } from '@/lib/readiness/person-evidence';
import type { RoleProfile } from '@/lib/readiness/profile';
import { listTold } from '../evidence/read-progress';
import { freshenStates } from '../evidence/read-states';
import { settleEvidence } from '../evidence/settle';
import { settingsFrom } from '../organization-settings';

/** What people have shown of what a profile asks for, by person; nobody without any is there. Read once for all of them. */
export async function readEvidence(
  db: Db,
  whose: WhoseStates,
  { topics }: Pick<RoleProfile, 'topics'>,
): Promise<Map<string, PersonEvidence>> {
  await freshenStates(db, whose.organizationId, whose.learnerId === undefined ? undefined : [whose.learnerId]);
  const [states, safety] = await Promise.all([
    listStatesOn(
      db,
      whose,
      topics.map(({ topic }) => topic),
    ),
    listSafetyOf(db, whose),
  ]);
  const people = new Map<string, { tallies: Map<string, Tally>; cases: Map<string, number> }>();
  for (const { learnerId, topic, at, sum, count, weight, cases } of states) {
    const person = people.get(learnerId) ?? { tallies: new Map(), cases: new Map() };
    person.tallies.set(topic, { at: at.getTime(), sum: fromBytes(sum), count, weight });
    person.cases.set(topic, cases);
    people.set(learnerId, person);
  }
  const recent = new Map(safety.map((row) => [row.learnerId, row.recent]));
  const ids = new Set([...people.keys(), ...recent.keys()]);
  return new Map(
    [...ids].map((id) => [id, { ...noEvidence, ...people.get(id), safety: recent.get(id) ?? noEvidence.safety }]),
  );
}

/** The same of one person, as far as they may know it themselves. */
export async function readOwnEvidence(
  db: Db,
  whose: { organizationId: string; learnerId: string },
  now: Date,
): Promise<PersonEvidence> {
  await settleEvidence(db, whose);
  const told = await listTold(db, whose, now);
  const { evidenceHalfLifeDays } = settingsFrom((await findOrganization(db, whose.organizationId))?.settings);
  const states = [...statesOf(told, evidenceHalfLifeDays)];
  return {
    tallies: new Map(states.map(([topic, { tally }]) => [topic, tally])),
    cases: new Map(states.map(([topic, { cases }]) => [topic, cases])),
    safety: recentCasesOf(told),
  };
}
