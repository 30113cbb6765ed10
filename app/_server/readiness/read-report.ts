import { listObservations, type StoredObservation } from '@/db/queries/observations';
import { listSignOffs, type StoredSignOff } from '@/db/queries/sign-offs';
import type { OrganizationSettings } from '@/lib/accounts/settings';
import { HORIZON_DAYS, standingAndChanges } from '@/lib/readiness/board';
import type { Change } from '@/lib/readiness/changes-soon';
import type { Standing } from '@/lib/readiness/intake-outcome';
import { noEvidence, type PersonEvidence } from '@/lib/readiness/person-evidence';
import type { RoleProfile } from '@/lib/readiness/profile';
import { type Sentences, sentencesOf } from '@/lib/readiness/sentences';
import { type HandsOnCheck, newestCheck, type Obstacle, obstaclesTo } from '@/lib/readiness/sign-off';
import { type Training, trainNext } from '@/lib/readiness/train-next';
import { database } from '../database';
import { readSettings } from '../organization-settings';
import { memberNamed, type NamedMember } from '../people/change-member';
import type { SignedInPermit } from '../permit';
import { findProfile } from '../profiles';
import { readEvidence, readOwnEvidence } from './read-evidence';

/** As many hands-on checks and sign-offs as one looks back over. */
const LISTED = 50;

/** Everything that is said of somebody in a role. Extra time is no part of it. */
export interface Report {
  person: NamedMember;
  profile: RoleProfile;
  standing: Standing;
  changes: readonly Change[];
  sentences: Sentences;
  trainings: readonly Training[];
  checks: readonly StoredObservation[];
  /** The hands-on check that counts for this role; undefined without one. */
  check: StoredObservation | undefined;
  signOffs: readonly StoredSignOff[];
  /** The one that stands; undefined without one. */
  signOff: StoredSignOff | undefined;
  /** What stands in the way of a sign-off by whoever looks at it. */
  obstacles: readonly Obstacle[];
  settings: OrganizationSettings;
  /** Everybody in the organisation is invented. */
  demo: boolean;
  at: Date;
}

/** What is said of the member that a permit is for; undefined where the organisation has no such profile. */
export async function readReport(permit: SignedInPermit, profileId: string, at: Date): Promise<Report | undefined> {
  const db = database();
  const person = await memberNamed(permit);
  const { organizationId, userId: learnerId } = person;
  const profile = await findProfile(db, organizationId, profileId);
  if (!profile) return undefined;
  const whose = { organizationId, learnerId };
  const [evidence, checks, allSignOffs, settings] = await Promise.all([
    evidenceFor(permit, whose, profile, at),
    listObservations(db, whose, LISTED),
    listSignOffs(db, whose, LISTED),
    readSettings(organizationId),
  ]);
  const { standing, changes } = standingAndChanges(evidence, profile, settings.evidenceHalfLifeDays, at.getTime());
  const signOffs = allSignOffs.filter((one) => one.profileId === profile.id);
  const signOff = signOffs.find(({ takenBackAt, endsAt }) => takenBackAt === null && endsAt > at);
  const facts = checks.map(checkFacts);
  const counted = newestCheck(facts, profile);
  return {
    person,
    profile,
    standing,
    changes,
    sentences: sentencesOf(standing, profile, {
      changes,
      signOffEndsAt: signOff?.endsAt.getTime() ?? null,
      horizonDays: HORIZON_DAYS,
    }),
    trainings: trainNext(standing, profile, changes),
    checks,
    check: checks.find(({ id }) => id === counted?.id),
    signOffs,
    signOff,
    obstacles: obstaclesTo({
      profile,
      standing,
      checks: facts,
      learnerId,
      signerId: permit.session.actor.personId,
    }),
    settings,
    demo: permit.session.organization?.demo ?? false,
    at,
  };
}

/** Somebody who looks at a report of their own sees what they have been told. */
async function evidenceFor(
  { session }: SignedInPermit,
  whose: { organizationId: string; learnerId: string },
  profile: RoleProfile,
  at: Date,
): Promise<PersonEvidence> {
  if (session.actor.personId === whose.learnerId) return readOwnEvidence(database(), whose, at);
  return (await readEvidence(database(), whose, profile)).get(whose.learnerId) ?? noEvidence;
}

function checkFacts({ id, profileId, items, unsafe, observedAt, takenBackAt }: StoredObservation): HandsOnCheck {
  return { id, profileId, items, unsafe, observedAt: observedAt.getTime(), takenBack: takenBackAt !== null };
}
