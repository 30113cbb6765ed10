import { asc, eq } from 'drizzle-orm';
import type { Part } from '../../lib/grading/grade';
import type { Db } from '../client';
import { overrides, users } from '../schema';
import type { Statement } from '../together';
import { about, type WorkKey } from './comments';
import { owingCase, owingQuestion } from './evidence-due';
import { forgettingResult } from './turn-results';

export type NewOverride = typeof overrides.$inferInsert;

export interface OverrideLine {
  id: string;
  /** Null for a question. */
  part: Part | null;
  /** Of the sitting; null for an attempt. */
  place: number | null;
  /** Null takes an earlier one back. */
  points: number | null;
  reason: string;
  /** Null once they are erased. */
  giver: string | null;
  givenAt: Date;
}

/** Points that people gave for a piece of work in the place of those computed, oldest first. */
export async function listOverridesOf(db: Db, work: WorkKey): Promise<OverrideLine[]> {
  return db
    .select({
      id: overrides.id,
      part: overrides.part,
      place: overrides.place,
      points: overrides.points,
      reason: overrides.reason,
      giver: users.name,
      givenAt: overrides.givenAt,
    })
    .from(overrides)
    .leftJoin(users, eq(users.id, overrides.givenBy))
    .where(about(overrides, work))
    .orderBy(asc(overrides.givenAt), asc(overrides.id));
}

/** Gives points; what the turn came to that the work is part of is forgotten with it, and its evidence owed. */
export function givingPoints(db: Db, override: NewOverride): Statement[] {
  const { attemptId, sittingId } = override;
  const work = attemptId ? { attemptId } : { sittingId: sittingId ?? '' };
  const owing = attemptId
    ? owingCase(db, attemptId, override.givenAt)
    : owingQuestion(db, { sittingId: sittingId ?? '', place: override.place ?? 0 }, override.givenAt);
  return [db.insert(overrides).values(override), forgettingResult(db, work), owing];
}
