import { and, asc, eq, exists, isNotNull, notInArray, or, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import {
  attempts,
  calls,
  evidence,
  evidenceDue,
  observations,
  questionMarks,
  sittings,
  turns,
  turnTasks,
} from '../schema';
import type { Statement } from '../together';

export type DueRow = typeof evidenceDue.$inferSelect;

/** How work is named in the log of evidence. */
export const caseWork = (attemptId: string) => `attempt ${attemptId}`;
export const questionWork = (sittingId: string, place: number) => `sitting ${sittingId} ${place}`;
export const observationWork = (observationId: string) => `observation ${observationId}`;

/** Puts down that the evidence of some work is to be written, or written anew. Goes with whatever changes the mark. */
export function owingEvidence(db: Db, due: DueRow): Statement {
  return db.insert(evidenceDue).values(due).onConflictDoUpdate(later);
}

/** The same for the case of an attempt; nothing where it belongs to no organisation. */
export function owingCase(db: Db, attemptId: string, since: Date): Statement {
  return db
    .insert(evidenceDue)
    .select(ofCases(db, since).where(and(eq(attempts.id, attemptId), isNotNull(attempts.organizationId))))
    .onConflictDoUpdate(later);
}

/** The same for a marked question. */
export function owingQuestion(
  db: Db,
  { sittingId, place }: { sittingId: string; place: number },
  since: Date,
): Statement {
  return db
    .insert(evidenceDue)
    .select(ofQuestions(db, since).where(and(eq(questionMarks.sittingId, sittingId), eq(questionMarks.place, place))))
    .onConflictDoUpdate(later);
}

/** The same for a hands-on check. */
export function owingObservation(db: Db, observationId: string, since: Date): Statement {
  const work = sql<string>`'observation ' || ${observations.id}`.as('work');
  const row = { work, learnerId: observations.learnerId, organizationId: observations.organizationId };
  return db
    .insert(evidenceDue)
    .select(
      db
        .select({ ...row, since: stamped(since) })
        .from(observations)
        .where(eq(observations.id, observationId)),
    )
    .onConflictDoUpdate(later);
}

/** The same for all work at an assignment. */
export function owingAssignment(db: Db, assignmentId: string, since: Date): Statement[] {
  const called = exists(db.select({ one: sql`1` }).from(calls).where(eq(calls.attemptId, attempts.id)));
  const cases = ofCases(db, since)
    .innerJoin(turnTasks, eq(turnTasks.attemptId, attempts.id))
    .innerJoin(turns, eq(turns.id, turnTasks.turnId))
    .where(and(eq(turns.assignmentId, assignmentId), isNotNull(attempts.organizationId), called));
  const questions = ofQuestions(db, since)
    .innerJoin(turns, eq(turns.sittingId, sittings.id))
    .where(eq(turns.assignmentId, assignmentId));
  return [cases, questions].map((rows) => db.insert(evidenceDue).select(rows).onConflictDoUpdate(later));
}

/** Work of an organisation, or of one person there, whose evidence is to be written, somebody's together. */
export async function listDue(
  db: Db,
  of: { organizationId: string; learnerId?: string | undefined },
  { limit, except = [] }: { limit: number; except?: readonly string[] },
): Promise<DueRow[]> {
  return db
    .select()
    .from(evidenceDue)
    .where(
      and(
        eq(evidenceDue.organizationId, of.organizationId),
        of.learnerId === undefined ? undefined : eq(evidenceDue.learnerId, of.learnerId),
        except.length > 0 ? notInArray(evidenceDue.work, [...except]) : undefined,
      ),
    )
    .orderBy(asc(evidenceDue.learnerId), asc(evidenceDue.since), asc(evidenceDue.work))
    .limit(limit);
}

/**
 * Claims work of one person as done. Claims nothing where somebody else did any of it meanwhile, or added to the person's log:
 * what was derived must then be derived again.
 *
 * @param logged  Rows of theirs in the log when it was derived.
 */
export function takingDue(db: Db, rows: readonly DueRow[], logged: number): Statement {
  const [{ learnerId, organizationId } = { learnerId: '', organizationId: '' }] = rows;
  const as = or(...rows.map(({ work, since }) => and(eq(evidenceDue.work, work), eq(evidenceDue.since, since))));
  const whose = and(eq(evidenceDue.learnerId, learnerId), eq(evidenceDue.organizationId, organizationId));
  const still = db.select({ count: sql<number>`count(*)` }).from(evidenceDue).where(and(whose, as));
  return db.delete(evidenceDue).where(
    and(
      whose,
      as,
      // Not named by its table, since a query inside speaks of the same one.
      sql`${still} = ${rows.length}`,
      sql`${countingLog(db, { learnerId, organizationId })} = ${logged}`,
    ),
  );
}

function countingLog(db: Db, { learnerId, organizationId }: { learnerId: string; organizationId: string }) {
  return db
    .select({ count: sql<number>`count(*)` })
    .from(evidence)
    .where(and(eq(evidence.learnerId, learnerId), eq(evidence.organizationId, organizationId)));
}

/** Owed again, so that whoever is writing it already finds that it has moved. */
const later: { target: typeof evidenceDue.work; set: Record<'since' | 'learnerId', SQL> } = {
  target: evidenceDue.work,
  set: {
    since: sql`case when excluded.since > ${evidenceDue.since} then excluded.since else ${evidenceDue.since} + 1 end`,
    learnerId: sql`excluded.learner_id`,
  },
};

function stamped(since: Date) {
  return sql<Date>`${sql.param(since, evidenceDue.since)}`.as('since');
}

function ofCases(db: Db, since: Date) {
  return db
    .select({
      work: sql<string>`'attempt ' || ${attempts.id}`.as('work'),
      learnerId: attempts.learnerId,
      organizationId: sql<string>`${attempts.organizationId}`.as('organization_id'),
      since: stamped(since),
    })
    .from(attempts)
    .$dynamic();
}

function ofQuestions(db: Db, since: Date) {
  return db
    .select({
      work: sql<string>`'sitting ' || ${questionMarks.sittingId} || ' ' || ${questionMarks.place}`.as('work'),
      learnerId: sittings.learnerId,
      organizationId: sittings.organizationId,
      since: stamped(since),
    })
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .$dynamic();
}
