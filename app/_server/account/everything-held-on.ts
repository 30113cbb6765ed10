import type { Db } from '@/db/client';
import {
  listHeldApplications,
  listHeldCertificateEvents,
  listHeldCertificates,
  listHeldEvidence,
  listHeldIntakes,
  listHeldObservations,
  listHeldRatings,
  listHeldSignOffs,
} from '@/db/queries/held-competency';
import {
  findSecretSetAt,
  listHeldAttemptIds,
  listHeldClassPlaces,
  listHeldInvitations,
  listHeldLogEntries,
  listHeldMarksGiven,
  listHeldMemberships,
  listHeldPictures,
  listHeldSessions,
  listHeldSittingIds,
  listHeldVersions,
} from '@/db/queries/held-on';
import {
  listHeldAppeals,
  listHeldAssigned,
  listHeldComments,
  listHeldNudges,
  listHeldOverrides,
  listHeldSetVersions,
  listHeldTurns,
} from '@/db/queries/held-teaching';
import { findUser, type User } from '@/db/queries/users';
import { parseRoles } from '@/lib/accounts/roles';
import { shownName } from '@/lib/accounts/sign-in-name';
import { listUntoldEverywhere } from '../turns/untold';
import { type HeldAttempt, heldAttempt } from './held-attempt';
import { type HeldSitting, heldSitting } from './held-sitting';

/** What the installation holds on a person. Others stand in it by their ids alone. */
export interface HeldOn {
  /** What is read at once; the rest is read while it is sent. */
  facts: HeldFacts;
  attempts: () => AsyncGenerator<HeldAttempt>;
  sittings: () => AsyncGenerator<HeldSitting>;
  log: () => AsyncGenerator<HeldLogEntry>;
}

type HeldFacts = NonNullable<Awaited<ReturnType<typeof heldFacts>>>;

export interface HeldLogEntry {
  at: Date;
  organizationId: string | null;
  event: string;
  actorId: string | null;
  personId: string | null;
  details: object;
}

/**
 * Everything that is held on a person, except what opens doors (hashes, tokens) and what would tell the hidden cause of
 * a case that they still work on, the key of a question that they have not answered, or what came of assessed work before
 * it is told.
 *
 * @param organizationId  The one that is asked about; all of them when left out.
 * @returns undefined when there is no such person.
 */
export async function everythingHeldOn(
  db: Db,
  personId: string,
  now: Date,
  organizationId?: string,
): Promise<HeldOn | undefined> {
  const facts = await heldFacts(db, personId, now, organizationId);
  if (!facts) return undefined;
  return {
    facts,
    attempts: () => heldAttempts(db, personId, now, organizationId),
    sittings: () => heldSittings(db, personId, now, organizationId),
    log: () => heldLog(db, personId, organizationId),
  };
}

async function heldFacts(db: Db, personId: string, now: Date, organizationId?: string) {
  const user = await findUser(db, personId);
  if (!user) return undefined;
  const told = await toldWork(db, personId, now);
  const memberships = await listHeldMemberships(db, personId, organizationId);
  return {
    account: { ...heldAccount(user), secretSetAt: (await findSecretSetAt(db, personId)) ?? null },
    memberships: memberships.map(({ role, ...rest }) => ({ ...rest, roles: parseRoles(role) })),
    classes: await listHeldClassPlaces(db, personId, organizationId),
    invitations: await listHeldInvitations(db, { userId: personId, address: user.email }, organizationId),
    sessions: await listHeldSessions(db, personId, organizationId),
    questionsWritten: await listHeldVersions(db, personId, organizationId),
    pictures: await listHeldPictures(db, personId, organizationId),
    marksGiven: await listHeldMarksGiven(db, personId, organizationId),
    assigned: await listHeldAssigned(db, personId, organizationId),
    turns: await listHeldTurns(db, personId, organizationId),
    messagesAtWork: await listHeldNudges(db, personId, organizationId),
    comments: (await listHeldComments(db, personId, organizationId)).filter(told),
    marksChanged: (await listHeldOverrides(db, personId, organizationId)).filter(told),
    appeals: await listHeldAppeals(db, personId, organizationId),
    setsWritten: await listHeldSetVersions(db, personId, organizationId),
    ...(await heldCompetency(db, personId, now, organizationId)),
  };
}

async function heldCompetency(db: Db, personId: string, now: Date, organizationId?: string) {
  const told = await toldEvidence(db, personId, now);
  return {
    evidence: (await listHeldEvidence(db, personId, organizationId)).filter(told),
    newHireChecks: await listHeldIntakes(db, personId, organizationId),
    handsOnChecks: await listHeldObservations(db, personId, organizationId),
    signOffs: await listHeldSignOffs(db, personId, organizationId),
    applications: await listHeldApplications(db, personId, organizationId),
    certificates: await listHeldCertificates(db, personId, organizationId),
    certificateEvents: await listHeldCertificateEvents(db, personId, organizationId),
    ratingsOfPanels: await listHeldRatings(db, personId, organizationId),
  };
}

/** Evidence of work of which a person may be told what came of it. */
async function toldEvidence(db: Db, personId: string, now: Date) {
  const { attempts, sittings } = await listUntoldEverywhere(db, personId, now);
  return ({ work }: { work: string }) => {
    const [kind, id = ''] = work.split(' ');
    return !(kind === 'attempt' ? attempts : sittings).has(id);
  };
}

/** Whether something is about work of which a person may be told what came of it, or about other people's. */
async function toldWork(db: Db, personId: string, now: Date) {
  const { attempts, sittings } = await listUntoldEverywhere(db, personId, now);
  return ({ attemptId, sittingId }: { attemptId: string | null; sittingId: string | null }) =>
    !attempts.has(attemptId ?? '') && !sittings.has(sittingId ?? '');
}

function heldAccount({ id, name, email, keeper, createdAt, updatedAt }: User) {
  return { personId: id, name, signInName: shownName(email), keeper, createdAt, updatedAt };
}

/** One at a time: the traces of a year's work are more than one wants in memory at once. */
async function* heldAttempts(
  db: Db,
  personId: string,
  now: Date,
  organizationId?: string,
): AsyncGenerator<HeldAttempt> {
  for (const id of await listHeldAttemptIds(db, personId, organizationId)) {
    const attempt = await heldAttempt(db, personId, id, now);
    if (attempt) yield attempt;
  }
}

async function* heldSittings(
  db: Db,
  personId: string,
  now: Date,
  organizationId?: string,
): AsyncGenerator<HeldSitting> {
  for (const id of await listHeldSittingIds(db, personId, organizationId)) {
    const sitting = await heldSitting(db, personId, id, now);
    if (sitting) yield sitting;
  }
}

const ENTRIES_AT_ONCE = 500;

async function* heldLog(db: Db, personId: string, organizationId?: string): AsyncGenerator<HeldLogEntry> {
  for (let after = 0; ; ) {
    const entries = await listHeldLogEntries(db, personId, { organizationId, after, limit: ENTRIES_AT_ONCE });
    for (const { seq: _, ...entry } of entries) yield entry;
    const last = entries.at(-1);
    if (!last || entries.length < ENTRIES_AT_ONCE) return;
    after = last.seq;
  }
}
