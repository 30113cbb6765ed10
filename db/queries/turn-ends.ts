import { and, asc, eq, gt, isNull, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { sittings, turns } from '../schema';
import type { Statement } from '../together';

export interface TurnLine {
  id: string;
  learnerId: string;
  number: number;
  startedAt: Date;
  endsAt: Date;
  handedInAt: Date | null;
}

/** Every turn at an assignment, somebody's turns in their order. */
export async function listTurnLines(db: Db, assignmentId: string): Promise<TurnLine[]> {
  return db
    .select({
      id: turns.id,
      learnerId: turns.learnerId,
      number: turns.number,
      startedAt: turns.startedAt,
      endsAt: turns.endsAt,
      handedInAt: turns.handedInAt,
    })
    .from(turns)
    .where(eq(turns.assignmentId, assignmentId))
    .orderBy(asc(turns.learnerId), asc(turns.number));
}

/** Moves the end of a turn that still goes on, and of its questions with it. */
export function movingTurnsEnd(
  db: Db,
  { turnId, endsAt, now }: { turnId: string; endsAt: Date; now: Date },
): Statement[] {
  const goesOn = and(eq(turns.id, turnId), isNull(turns.handedInAt), gt(turns.endsAt, now));
  const itsSitting = db.select({ id: turns.sittingId }).from(turns).where(goesOn);
  return [
    // First, since whether the turn goes on is read from the turn.
    db
      .update(sittings)
      .set({ closesAt: endsAt })
      .where(and(sql`${sittings.id} in ${itsSitting}`, isNull(sittings.handedInAt))),
    db.update(turns).set({ endsAt }).where(goesOn),
  ];
}
