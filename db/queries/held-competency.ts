import { and, asc, eq, or } from 'drizzle-orm';
import type { Db } from '../client';
import {
  applications,
  certificateEvents,
  certificates,
  evidence,
  intakes,
  observations,
  panelRatings,
  panels,
  signOffs,
} from '../schema';

/**
 * What is held on what a person has shown, table by table, for them to take away: the evidence, new-hire checks, what they were
 * seen doing, what was decided on it and their certificates. Each takes the organisation that is asked about, or undefined for
 * all of them.
 */

export async function listHeldEvidence(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(evidence.organizationId, organizationId) : undefined;
  return db
    .select()
    .from(evidence)
    .where(and(eq(evidence.learnerId, userId), here))
    .orderBy(asc(evidence.at), asc(evidence.id));
}

/** Without what was drawn from and the link. */
export async function listHeldIntakes(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(intakes.organizationId, organizationId) : undefined;
  return db
    .select({
      intakeId: intakes.id,
      organizationId: intakes.organizationId,
      profileId: intakes.profileId,
      createdBy: intakes.createdBy,
      createdAt: intakes.createdAt,
      extraTime: intakes.extraTime,
      startedAt: intakes.startedAt,
      finishedAt: intakes.finishedAt,
      end: intakes.end,
      outcome: intakes.outcome,
    })
    .from(intakes)
    .where(and(eq(intakes.learnerId, userId), here))
    .orderBy(asc(intakes.createdAt), asc(intakes.id));
}

/** What they were seen doing, and what they saw others do. */
export async function listHeldObservations(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(observations.organizationId, organizationId) : undefined;
  const theirs = or(
    eq(observations.learnerId, userId),
    organizationId ? undefined : eq(observations.observedBy, userId),
  );
  return db
    .select()
    .from(observations)
    .where(and(theirs, here))
    .orderBy(asc(observations.observedAt), asc(observations.id));
}

/** What was signed of them, and what they signed. */
export async function listHeldSignOffs(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(signOffs.organizationId, organizationId) : undefined;
  const theirs = or(eq(signOffs.learnerId, userId), organizationId ? undefined : eq(signOffs.signedBy, userId));
  return db.select().from(signOffs).where(and(theirs, here)).orderBy(asc(signOffs.signedAt), asc(signOffs.id));
}

export async function listHeldApplications(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(applications.organizationId, organizationId) : undefined;
  return db
    .select()
    .from(applications)
    .where(and(eq(applications.learnerId, userId), here))
    .orderBy(asc(applications.appliedAt), asc(applications.id));
}

export async function listHeldCertificates(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(certificates.organizationId, organizationId) : undefined;
  return db
    .select()
    .from(certificates)
    .where(and(eq(certificates.learnerId, userId), here))
    .orderBy(asc(certificates.issuedAt), asc(certificates.id));
}

/** What befell their certificates. */
export async function listHeldCertificateEvents(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(certificates.organizationId, organizationId) : undefined;
  return db
    .select({
      certificateId: certificateEvents.certificateId,
      kind: certificateEvents.kind,
      reason: certificateEvents.reason,
      by: certificateEvents.by,
      at: certificateEvents.at,
    })
    .from(certificateEvents)
    .innerJoin(certificates, eq(certificates.id, certificateEvents.certificateId))
    .where(and(eq(certificates.learnerId, userId), here))
    .orderBy(asc(certificateEvents.at), asc(certificateEvents.id));
}

/** What they rated as a judge of a panel. */
export async function listHeldRatings(db: Db, userId: string, organizationId?: string) {
  const here = organizationId ? eq(panels.organizationId, organizationId) : undefined;
  return db
    .select({
      panelId: panels.id,
      title: panels.title,
      organizationId: panels.organizationId,
      round: panelRatings.round,
      task: panelRatings.task,
      expected: panelRatings.expected,
      ratedAt: panelRatings.ratedAt,
    })
    .from(panelRatings)
    .innerJoin(panels, eq(panels.id, panelRatings.panelId))
    .where(and(eq(panelRatings.judgeId, userId), here))
    .orderBy(asc(panelRatings.panelId), asc(panelRatings.round), asc(panelRatings.task));
}
