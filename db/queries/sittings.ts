import { and, count, desc, eq, gt, isNull, lte, or, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { sittingAnswers, sittingQuestions, sittings } from '../schema';
import type { Statement } from '../together';
import { countedCredit, marksOfSitting } from './question-marks';

export type Sitting = typeof sittings.$inferSelect;
export type NewSitting = typeof sittings.$inferInsert;
export type SittingMode = Sitting['mode'];

/** Whose sittings, in which organisation. */
export interface SittingsOf {
  learnerId: string;
  organizationId: string;
}

/** Starts a sitting; changes nothing where the key has started one. */
export function addingSitting(db: Db, sitting: NewSitting): Statement {
  return db
    .insert(sittings)
    .values(sitting)
    .onConflictDoNothing({ target: [sittings.learnerId, sittings.key] });
}

/** The sitting that a key has started; undefined where it has started none. */
export async function findSittingByKey(db: Db, learnerId: string, key: string): Promise<Sitting | undefined> {
  const [sitting] = await db
    .select()
    .from(sittings)
    .where(and(eq(sittings.learnerId, learnerId), eq(sittings.key, key)));
  return sitting;
}

/** One learner's sitting; undefined when it is missing or someone else's. */
export async function findSitting(db: Db, learnerId: string, sittingId: string): Promise<Sitting | undefined> {
  const [sitting] = await db
    .select()
    .from(sittings)
    .where(and(eq(sittings.id, sittingId), eq(sittings.learnerId, learnerId)));
  return sitting;
}

/** Whose a sitting is, and where it was made; undefined when there is none. The door compares. */
export async function findSittingWork(db: Db, sittingId: string): Promise<SittingsOf | undefined> {
  const [row] = await db
    .select({ learnerId: sittings.learnerId, organizationId: sittings.organizationId })
    .from(sittings)
    .where(eq(sittings.id, sittingId));
  return row;
}

export interface SittingLine
  extends Pick<Sitting, 'id' | 'mode' | 'topics' | 'demo' | 'createdAt' | 'closesAt' | 'handedInAt'> {
  questions: number;
  /** Marked so far, in whatever way. */
  marked: number;
  /** Wholly right. */
  right: number;
}

/** A learner's sittings in an organisation, newest first. */
export async function listSittings(db: Db, of: SittingsOf, limit: number): Promise<SittingLine[]> {
  const questions = db
    .select({ value: count() })
    .from(sittingQuestions)
    .where(eq(sittingQuestions.sittingId, sittings.id));
  return db
    .select({
      id: sittings.id,
      mode: sittings.mode,
      topics: sittings.topics,
      demo: sittings.demo,
      createdAt: sittings.createdAt,
      closesAt: sittings.closesAt,
      handedInAt: sittings.handedInAt,
      questions: sql<number>`(${questions})`,
      marked: sql<number>`(${marksOfSitting(db)})`,
      right: sql<number>`(${marksOfSitting(db, sql`${countedCredit(db)} > 0.999999`)})`,
    })
    .from(sittings)
    .where(ofLearnerIn(of))
    .orderBy(desc(sittings.createdAt), desc(sittings.id))
    .limit(limit);
}

/** How many sittings a learner has begun in an organisation. */
export async function countSittings(db: Db, of: SittingsOf): Promise<number> {
  return db.$count(sittings, ofLearnerIn(of));
}

/** Sittings of a learner that ran out of time by a moment and were not handed in. */
export async function listOverdue(db: Db, of: SittingsOf, at: Date): Promise<Sitting[]> {
  return db
    .select()
    .from(sittings)
    .where(and(ofLearnerIn(of), isNull(sittings.handedInAt), lte(sittings.closesAt, at)));
}

/**
 * Hands a sitting in. Changes nothing where it is handed in already, where an answer came in after `lastSeq` that was not
 * looked at, or where it is missing or someone else's.
 */
export function handingIn(
  db: Db,
  learnerId: string,
  { sittingId, lastSeq, at }: { sittingId: string; lastSeq: number; at: Date },
): Statement {
  const last = db
    .select({ last: sql<number>`coalesce(max(${sittingAnswers.seq}), 0)` })
    .from(sittingAnswers)
    .where(eq(sittingAnswers.sittingId, sittingId));
  return db
    .update(sittings)
    .set({ handedInAt: at })
    .where(
      and(
        eq(sittings.id, sittingId),
        eq(sittings.learnerId, learnerId),
        isNull(sittings.handedInAt),
        eq(last, sql`${lastSeq}`),
      ),
    );
}

/** An open sitting of a learner's whose time was not over at a moment. */
export function isOpenFor(learnerId: string, sittingId: string, at: Date): SQL | undefined {
  const inTime = or(isNull(sittings.closesAt), gt(sittings.closesAt, at));
  return and(eq(sittings.id, sittingId), eq(sittings.learnerId, learnerId), isNull(sittings.handedInAt), inTime);
}

function ofLearnerIn({ learnerId, organizationId }: SittingsOf): SQL | undefined {
  return and(eq(sittings.learnerId, learnerId), eq(sittings.organizationId, organizationId));
}
