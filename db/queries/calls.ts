import { and, eq, not, sql } from 'drizzle-orm';
import type { CallAct } from '../../lib/grading/acts';
import type { Grade } from '../../lib/grading/grade';
import type { Db } from '../client';
import { acts, attempts, calls } from '../schema';
import { claimThen } from '../together';
import { owingCase } from './evidence-due';
import { isInIntakeOver } from './intakes';
import { isInTurnOver } from './turns';

export type CallRow = typeof calls.$inferSelect;

/** The call that closed a learner's attempt; undefined while it is open, and when it is missing or someone else's. */
export async function findCall(db: Db, learnerId: string, attemptId: string): Promise<CallRow | undefined> {
  const [row] = await db
    .select({ call: calls })
    .from(calls)
    .innerJoin(attempts, eq(attempts.id, calls.attemptId))
    .where(and(eq(calls.attemptId, attemptId), eq(attempts.learnerId, learnerId)));
  return row?.call;
}

export interface NewCall {
  attemptId: string;
  /** One more than the last act that was graded. */
  seq: number;
  key: string;
  body: CallAct;
  grade: Grade;
  calledAt: Date;
}

/**
 * Closes a learner's attempt with its call and grade, in one statement, and owes its evidence.
 * Undefined, and nothing changed, when it is closed already, when an act came in that was not graded, when it is part of a
 * turn or a new-hire check that is over, or when the attempt is missing or someone else's.
 *
 * @param openAt  A turn or a new-hire check that ended by then is over.
 */
export async function recordCall(
  db: Db,
  learnerId: string,
  call: NewCall,
  openAt = call.calledAt,
): Promise<CallRow | undefined> {
  const lastSeq = db
    .select({ last: sql<number>`coalesce(max(${acts.seq}), 0)` })
    .from(acts)
    .where(eq(acts.attemptId, attempts.id));
  const closing = db
    .insert(calls)
    .select(
      db
        .select({
          attemptId: attempts.id,
          seq: sql<number>`${call.seq}`.as('seq'),
          key: sql<string>`${call.key}`.as('key'),
          body: sql<CallAct>`${sql.param(call.body, calls.body)}`.as('body'),
          grade: sql<Grade>`${sql.param(call.grade, calls.grade)}`.as('grade'),
          total: sql<number>`${call.grade.total}`.as('total'),
          calledAt: sql<Date>`${sql.param(call.calledAt, calls.calledAt)}`.as('called_at'),
        })
        .from(attempts)
        .where(
          and(
            eq(attempts.id, call.attemptId),
            eq(attempts.learnerId, learnerId),
            eq(lastSeq, sql`${call.seq - 1}`),
            not(isInTurnOver(db, openAt)),
            not(isInIntakeOver(db, openAt)),
          ),
        ),
    )
    .onConflictDoNothing();
  const closed = await claimThen(db, closing, [owingCase(db, call.attemptId, call.calledAt)]);
  return closed ? findCall(db, learnerId, call.attemptId) : undefined;
}
