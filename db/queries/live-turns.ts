import { and, eq, inArray, max } from 'drizzle-orm';
import type { ReadingAct } from '../../lib/grading/acts';
import type { Db } from '../client';
import { acts, attempts, calls, sittingAnswers, turns, turnTasks } from '../schema';

export interface LiveCase {
  turnId: string;
  place: number;
  attemptId: string;
  caseCode: string;
  openedAt: Date;
  /** Null while the call is not made. */
  calledAt: Date | null;
  /** Null before anything was done. */
  lastActAt: Date | null;
}

/** Cases that were opened in the turns at an assignment, and when something was last done at each. */
export async function listLiveCases(db: Db, assignmentId: string): Promise<LiveCase[]> {
  return db
    .select({
      turnId: turnTasks.turnId,
      place: turnTasks.place,
      attemptId: attempts.id,
      caseCode: attempts.caseCode,
      openedAt: attempts.createdAt,
      calledAt: calls.calledAt,
      lastActAt: max(acts.createdAt),
    })
    .from(turns)
    .innerJoin(turnTasks, eq(turnTasks.turnId, turns.id))
    .innerJoin(attempts, eq(attempts.id, turnTasks.attemptId))
    .leftJoin(calls, eq(calls.attemptId, attempts.id))
    .leftJoin(acts, eq(acts.attemptId, attempts.id))
    .where(eq(turns.assignmentId, assignmentId))
    .groupBy(turnTasks.turnId, turnTasks.place);
}

/** Questions that were answered in the turns at an assignment, by their place in the turn, and when last. */
export async function listLiveAnswers(
  db: Db,
  assignmentId: string,
): Promise<{ turnId: string; place: number; answeredAt: Date | null }[]> {
  return db
    .select({ turnId: turnTasks.turnId, place: turnTasks.place, answeredAt: max(sittingAnswers.answeredAt) })
    .from(turns)
    .innerJoin(turnTasks, eq(turnTasks.turnId, turns.id))
    .innerJoin(
      sittingAnswers,
      and(eq(sittingAnswers.sittingId, turns.sittingId), eq(sittingAnswers.place, turnTasks.sittingPlace)),
    )
    .where(eq(turns.assignmentId, assignmentId))
    .groupBy(turnTasks.turnId, turnTasks.place);
}

/** Every reading that was taken at some attempts. */
export async function listLiveReadings(
  db: Db,
  attemptIds: readonly string[],
): Promise<{ attemptId: string; seq: number; body: ReadingAct }[]> {
  const rows = await db
    .select({ attemptId: acts.attemptId, seq: acts.seq, body: acts.body })
    .from(acts)
    .where(and(inArray(acts.attemptId, [...attemptIds]), eq(acts.kind, 'reading')));
  return rows.flatMap(({ body, ...row }) => (body.kind === 'reading' ? [{ ...row, body }] : []));
}
