import { createHash } from 'node:crypto';
import { type AnyColumn, and, eq, inArray, notInArray, type SQL } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Db } from '../client';
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
} from '../schema';
import type { Statement } from '../together';
import { NOBODY } from './leaving-questions';
import type { MemberKey } from './people';

/**
 * Removes what a member showed and what was decided on it. Before their work itself goes. A certificate stays without them: it is
 * out in the world, and what it rested on must be answered for.
 */
export function removingCompetency(db: Db, member: MemberKey): Statement[] {
  const { organizationId, userId } = member;
  const own = (table: OfLearner) => and(eq(table.learnerId, userId), eq(table.organizationId, organizationId));
  const checks = db.select({ id: intakes.id }).from(intakes).where(own(intakes));
  const held = db.select({ id: certificates.id }).from(certificates).where(own(certificates));
  const applied = db.select({ id: certificates.applicationId }).from(certificates).where(own(certificates));
  return [
    db.delete(intakeTasks).where(inArray(intakeTasks.intakeId, checks)),
    ...[intakes, signOffs, observations, evidence, evidenceDue, topicStates, safetyStates].map((table) =>
      db.delete(table).where(own(table)),
    ),
    db.delete(presentations).where(inArray(presentations.certificateId, held)),
    db
      .update(applications)
      .set({ learnerId: NOBODY })
      .where(and(own(applications), inArray(applications.id, applied))),
    db.delete(applications).where(own(applications)),
    db
      .update(certificates)
      .set({ learnerId: NOBODY, jwt: '', comment: '', consent: { name: false, results: false } })
      .where(own(certificates)),
  ];
}

/** Makes what a member showed, and what was decided on it, somebody else's. What both come to together is worked out anew. */
export function movingCompetency(db: Db, from: MemberKey, to: string): Statement[] {
  const { organizationId, userId } = from;
  const ofBoth = (table: OfLearner) =>
    and(inArray(table.learnerId, [userId, to]), eq(table.organizationId, organizationId));
  const moved = [intakes, signOffs, observations, evidence, evidenceDue, applications, certificates] as const;
  return [
    ...moved.map((table) =>
      db
        .update(table as typeof evidence)
        .set({ learnerId: to })
        .where(and(eq(table.learnerId, userId), eq(table.organizationId, organizationId))),
    ),
    ...[topicStates, safetyStates].map((table) => db.delete(table).where(ofBoth(table))),
    db
      .insert(evidenceDue)
      .values({ work: `person ${to}`, learnerId: to, organizationId, since: new Date(0) })
      .onConflictDoNothing(),
  ];
}

/** Leaves what a member decided, wrote and judged without their name. */
export function partingFromCompetency(db: Db, member: MemberKey): Statement[] {
  return [...renamingDecisions(db, member, NOBODY), ...movingJudge(db, member, judgeGone(member.userId))];
}

/** Puts another name to what a member decided, wrote and judged. */
export function renamingCompetency(db: Db, member: MemberKey, to: string): Statement[] {
  return [...renamingDecisions(db, member, to), ...movingJudge(db, member, to)];
}

type OfLearner =
  | typeof intakes
  | typeof signOffs
  | typeof observations
  | typeof evidence
  | typeof evidenceDue
  | typeof topicStates
  | typeof safetyStates
  | typeof applications
  | typeof certificates;

function renamingDecisions(db: Db, { organizationId, userId }: MemberKey, to: string): Statement[] {
  const rename = (table: SQLiteTable, field: string, column: AnyColumn, here: SQL | undefined): Statement =>
    db
      .update(table)
      .set({ [field]: to })
      .where(and(eq(column, userId), here));
  const given = db
    .select({ id: certificates.id })
    .from(certificates)
    .where(eq(certificates.organizationId, organizationId));
  const at = (table: { organizationId: AnyColumn }) => eq(table.organizationId, organizationId);
  return [
    rename(intakes, 'createdBy', intakes.createdBy, at(intakes)),
    rename(roleProfiles, 'changedBy', roleProfiles.changedBy, at(roleProfiles)),
    rename(observations, 'observedBy', observations.observedBy, at(observations)),
    rename(observations, 'takenBackBy', observations.takenBackBy, at(observations)),
    rename(signOffs, 'signedBy', signOffs.signedBy, at(signOffs)),
    rename(signOffs, 'takenBackBy', signOffs.takenBackBy, at(signOffs)),
    rename(schemeVersions, 'changedBy', schemeVersions.changedBy, at(schemeVersions)),
    rename(panels, 'createdBy', panels.createdBy, at(panels)),
    rename(applications, 'decidedBy', applications.decidedBy, at(applications)),
    rename(issuerKeys, 'createdBy', issuerKeys.createdBy, at(issuerKeys)),
    rename(certificates, 'issuedBy', certificates.issuedBy, at(certificates)),
    rename(certificateEvents, 'by', certificateEvents.by, inArray(certificateEvents.certificateId, given)),
  ];
}

/** What they rated stays, since the line rests on it; where the other one judged too, the other's ratings do. */
function movingJudge(db: Db, { organizationId, userId }: MemberKey, to: string): Statement[] {
  const here = db.select({ id: panels.id }).from(panels).where(eq(panels.organizationId, organizationId));
  const judged = db.select({ id: panelJudges.panelId }).from(panelJudges).where(eq(panelJudges.judgeId, to));
  return [panelRatings, panelJudges].flatMap((table) => {
    const own = and(eq(table.judgeId, userId), inArray(table.panelId, here));
    return [
      db
        .update(table)
        .set({ judgeId: to })
        .where(and(own, notInArray(table.panelId, judged))),
      db.delete(table).where(own),
    ];
  });
}

/** Tells two judges apart who are both gone, and nothing else of them. */
function judgeGone(userId: string): string {
  return `gone ${createHash('sha256').update(userId).digest('hex').slice(0, 12)}`;
}
