import type { Db } from '@/db/client';
import { listSafetyOf, listStatesOn, type WhoseStates } from '@/db/queries/readiness';
import type { Tally } from '@/lib/competency/tally';
import { fromBytes } from '@/lib/competency/tally-bytes';
import { noEvidence, type PersonEvidence } from '@/lib/readiness/person-evidence';
import type { RoleProfile } from '@/lib/readiness/profile';
import { freshenStates } from '../evidence/read-states';

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
