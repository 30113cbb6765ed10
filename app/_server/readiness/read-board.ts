import { listClassPlaces, listLearners } from '@/db/queries/gradebook';
import { listStandingSignOffs } from '@/db/queries/sign-offs';
import { type BoardPerson, boardOf } from '@/lib/readiness/board';
import { noEvidence } from '@/lib/readiness/person-evidence';
import type { RoleProfile } from '@/lib/readiness/profile';
import { database } from '../database';
import { MOST_PEOPLE } from '../gradebook/read-book';
import { readSettings } from '../organization-settings';
import { readEvidence, readOwnEvidence } from './read-evidence';

export interface ReadBoard {
  people: readonly BoardPerson[];
  classes: readonly { id: string; name: string }[];
}

/**
 * How everybody who learns in an organisation stands in a role, as of now.
 *
 * @param readerId  Whoever looks at it. Of themselves they see what they have been told.
 */
export async function readBoard(
  organizationId: string,
  profile: RoleProfile,
  { now, readerId }: { now: Date; readerId: string },
): Promise<ReadBoard> {
  const db = database();
  const [learners, places, evidence, signOffs, settings] = await Promise.all([
    listLearners(db, organizationId, MOST_PEOPLE),
    listClassPlaces(db, organizationId),
    readEvidence(db, { organizationId }, profile),
    listStandingSignOffs(db, { organizationId, profileId: profile.id, at: now }),
    readSettings(organizationId),
  ]);
  if (learners.some(({ id }) => id === readerId))
    evidence.set(readerId, await readOwnEvidence(db, { organizationId, learnerId: readerId }, now));
  const ends = new Map(signOffs.map(({ learnerId, endsAt }) => [learnerId, endsAt.getTime()]));
  const classes = classesByPerson(places);
  const people = learners.map(({ id, name }) => ({
    id,
    name,
    classes: classes.get(id) ?? [],
    evidence: evidence.get(id) ?? noEvidence,
    signOffEndsAt: ends.get(id) ?? null,
  }));
  return {
    people: boardOf(people, profile, settings.evidenceHalfLifeDays, now.getTime()),
    classes: [...new Map(places.map(({ classId, name }) => [classId, { id: classId, name }])).values()],
  };
}

function classesByPerson(places: readonly { userId: string; classId: string }[]): Map<string, string[]> {
  const classes = new Map<string, string[]>();
  for (const { userId, classId } of places) classes.set(userId, [...(classes.get(userId) ?? []), classId]);
  return classes;
}
