import type { Db } from '@/db/client';
import {
  applications,
  certificateEvents,
  certificates,
  evidence,
  evidenceDue,
  intakes,
  intakeTasks,
  issuerKeys,
  observations,
  panelJudges,
  panelRatings,
  panels,
  presentations,
  roleProfiles,
  safetyStates,
  schemeVersions,
  signOffs,
  topicStates,
} from '@/db/schema';
import type { Standing } from '@/lib/readiness/intake-outcome';
import type { RoleProfile } from '@/lib/readiness/profile';
import type { Scheme } from '@/lib/readiness/scheme';

const at = new Date(Date.UTC(2026, 0, 1, 12));
const later = new Date(Date.UTC(2026, 6, 1, 12));

export function aRoleProfile(changes: Partial<RoleProfile> = {}): RoleProfile {
  return {
    id: 'helping-hand',
    version: 1,
    topics: [
      { topic: 'filtration', cut: 0, confidence: 0.9 },
      { topic: 'priming-and-lift-pump', cut: 0, confidence: 0.9 },
    ],
    refuse: 0.1,
    minimum: 3,
    maximum: 20,
    safety: { clean: 3, atLeast: 2 },
    recentDays: 180,
    validMonths: 12,
    minutes: 60,
    handsOn: null,
    text: { en: { name: 'Helping hand', about: 'Helps where somebody stands beside.' } },
    source: { kind: 'assumed', because: 'Invented for a test' },
    ...changes,
  };
}

export function aScheme(changes: Partial<Scheme> = {}): Scheme {
  return {
    id: 'helping-hand',
    version: 1,
    profile: 'helping-hand',
    taskAnalysis: { on: '2026-01-15', reviewMonths: 24 },
    blueprint: [{ topic: 'filtration', share: 1, atLeast: 3 }],
    cut: { ability: 0, standardError: null, setBy: { kind: 'assumed', because: 'Invented for a test' } },
    sitting: { minutes: 60, maximum: 20 },
    confidence: 0.9,
    refuse: 0.1,
    windowDays: 180,
    validMonths: 12,
    retake: { waitDays: [14, 30], perYear: 3 },
    appeal: { withinDays: 30, answeredInDays: 14 },
    text: {
      en: {
        name: 'Helping hand',
        claim: 'Helps',
        notFor: 'Working alone',
        criteria: 'Filtration',
        taskAnalysis: 'Four weeks in the yard',
        recertification: 'New cases',
        appeals: 'In writing',
        conflicts: 'Nobody decides about whom they taught',
        records: 'Kept six years',
        transition: 'First version',
      },
    },
    source: { kind: 'assumed', because: 'Invented for a test' },
    ...changes,
  };
}

export function aStanding(changes: Partial<Standing> = {}): Standing {
  return {
    profileId: 'helping-hand',
    profileVersion: 1,
    decision: 'ready',
    topics: [],
    safety: { code: 'clean', cases: 3, events: 0 },
    at: at.getTime(),
    ...changes,
  };
}

export function aCertificate(
  changes: Partial<typeof certificates.$inferInsert> & Record<'id' | 'organizationId' | 'learnerId' | 'kid', string>,
): typeof certificates.$inferInsert {
  return {
    schemeId: 'helping-hand',
    scheme: aScheme(),
    standing: aStanding(),
    jwt: `signed for ${changes.learnerId}`,
    statusIndex: 1,
    consent: { name: true, results: true },
    comment: 'Sound work',
    issuedBy: changes.learnerId,
    issuedAt: at,
    expiresAt: later,
    ...changes,
  };
}

/** All that an organisation may keep of what somebody has shown, and of what they decided and judged there. */
export async function addHeldCompetency(
  db: Db,
  of: Record<'userId' | 'organizationId' | 'stays' | 'attemptId' | 'sittingId', string> & { statusIndex: number },
): Promise<void> {
  const { userId, organizationId, stays } = of;
  await addHeldEvidence(db, of);
  await addHeldDecisions(db, of);
  const panelId = `panel-${stays}`;
  await db.insert(panels).values({
    ...{ id: panelId, organizationId, schemeId: 'helping-hand', title: 'Spring', tasks: [], state: 'first-round' },
    ...{ createdBy: userId, createdAt: at },
  });
  await db.insert(panelJudges).values({ panelId, judgeId: userId });
  await db.insert(panelRatings).values({ panelId, judgeId: userId, round: 1, task: 1, expected: 0.5, ratedAt: at });
  await db.insert(schemeVersions).values({
    ...{ id: `scheme-${stays}`, organizationId, schemeId: `scheme-${stays}`, version: 2, body: aScheme() },
    ...{ changedBy: userId, changedAt: at, note: 'Shorter window' },
  });
  await db.insert(roleProfiles).values({
    ...{ id: `profile-${stays}`, organizationId, profileId: `profile-${stays}`, version: 2, body: aRoleProfile() },
    ...{ changedBy: userId, changedAt: at },
  });
  await addHeldCertificate(db, of);
}

type Of = Parameters<typeof addHeldCompetency>[1];

async function addHeldEvidence(db: Db, { userId, organizationId, stays, attemptId, sittingId }: Of): Promise<void> {
  const learner = { learnerId: userId, organizationId };
  await db.insert(evidence).values({
    ...learner,
    ...{ id: `evidence-${stays}`, topic: 'filtration', source: 'case', work: `attempt ${attemptId}`, revision: 1 },
    ...{ counts: true, score: 3, model: { kind: 'steps', steps: [-1, 0, 1, 2], spread: 0.5 }, hints: 0 },
    ...{ exposure: `case of ${stays}`, safetyEvents: 0, purpose: 'practice', at, writtenAt: at },
    ...{ versions: { content: 'a', generator: 1 }, detail: { findings: [1], share: 0.8, because: 'cause' } },
  });
  // Where the attempt was called, it is owed already.
  await db
    .insert(evidenceDue)
    .values({ ...learner, work: `attempt ${attemptId}`, since: at })
    .onConflictDoNothing();
  await db.insert(topicStates).values({
    ...learner,
    ...{ topic: 'filtration', at, sum: Buffer.alloc(8), count: 1, weight: 1, cases: 1, halfLifeDays: 180, rules: 1 },
  });
  await db.insert(safetyStates).values({ ...learner, recent: [{ work: `attempt ${attemptId}`, at: 1, events: 0 }] });
  const intakeId = `intake-${stays}`;
  await db.insert(intakes).values({
    ...learner,
    ...{ id: intakeId, profileId: 'helping-hand', profile: aRoleProfile(), createdBy: userId, createdAt: at },
    ...{ tokenHash: `hash of ${intakeId}`, linkEndsAt: later, startedAt: at, endsAt: later, sittingId },
  });
  const choice = { topic: 'filtration', by: 'cut', contenders: [], stream: `drawn for ${userId}` } as const;
  await db.insert(intakeTasks).values({ intakeId, place: 1, poolTaskId: 'a', attemptId, choice, givenAt: at });
}

async function addHeldDecisions(db: Db, { userId, organizationId, stays }: Of): Promise<void> {
  const of = { learnerId: userId, organizationId };
  const observationId = `observation-${stays}`;
  const takenBack = { takenBackBy: userId, takenBackAt: at, takenBackReason: 'Another person' };
  await db.insert(observations).values({
    ...of,
    ...{ id: observationId, items: [], unsafe: false, comment: 'Steady', observedBy: userId, observedAt: at },
    ...{ writtenAt: at, ...takenBack },
  });
  await db.insert(signOffs).values({
    ...of,
    ...{ id: `sign-off-${stays}`, profileId: 'helping-hand', profile: aRoleProfile(), standing: aStanding() },
    ...{ comment: 'Good', observationId, signedBy: userId, signedAt: at, endsAt: later, ...takenBack },
  });
}

async function addHeldCertificate(db: Db, { userId, organizationId, stays, statusIndex }: Of): Promise<void> {
  const of = { learnerId: userId, organizationId };
  const applied = { schemeId: 'helping-hand', scheme: aScheme(), appliedAt: at };
  await db.insert(applications).values([
    { ...of, ...applied, id: `granted-${stays}`, state: 'granted', decidedBy: userId, decidedAt: at, reason: '' },
    { ...of, ...applied, id: `open-${stays}`, state: 'open' },
  ]);
  const kid = `key-${stays}`;
  await db
    .insert(issuerKeys)
    .values({ kid, organizationId, publicJwk: {}, sealedPrivate: '', createdBy: userId, createdAt: at });
  const id = `certificate-${stays}`;
  await db
    .insert(certificates)
    .values(aCertificate({ ...of, id, kid, applicationId: `granted-${stays}`, statusIndex }));
  await db
    .insert(certificateEvents)
    .values({ id: `event-${stays}`, certificateId: id, kind: 'suspended', reason: 'Asked', by: userId, at });
  await db.insert(presentations).values({
    ...{ id: `showing-${stays}`, certificateId: id, nonce: `number of ${userId}`, audience: 'A yard' },
    ...{ madeAt: at, endsAt: later },
  });
}
