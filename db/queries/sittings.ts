import { and, count, desc, eq, gt, isNull, lte, or, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { questionMarks, sittingQuestions, sittings } from '../schema';
import type { Statement } from '../together';

export type Sitting = typeof sittings.$inferSelect;
export type NewSitting = typeof sittings.$inferInsert;
export type SittingMode = Sitting['mode'];

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
export async function findSittingWork(
  db: Db,
  sittingId: string,
): Promise<Pick<Sitting, 'learnerId' | 'organizationId'> | undefined> {
  const [row] = await db
    .select({ learnerId: sittings.learnerId, organizationId: sittings.organizationId })
    .from(sittings)
    .where(eq(sittings.id, sittingId));
  return row;
}

export interface SittingLine extends Pick<Sitting, 'id' | 'mode' | 'topics' | 'demo' | 'createdAt' | 'handedInAt'> {
  questions: number;
  marked: number;
}

/** A learner's sittings in an organisation, newest first. */
export async function listSittings(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
  limit: number,
): Promise<SittingLine[]> {
  const questions = db
    .select({ value: count() })
    .from(sittingQuestions)
    .where(eq(sittingQuestions.sittingId, sittings.id));
  const marked = db.select({ value: count() }).from(questionMarks).where(eq(questionMarks.sittingId, sittings.id));
  return db
    .select({
      id: sittings.id,
      mode: sittings.mode,
      topics: sittings.topics,
      demo: sittings.demo,
      createdAt: sittings.createdAt,
      handedInAt: sittings.handedInAt,
      questions: sql<number>`(${questions})`,
      marked: sql<number>`(${marked})`,
    })
    .from(sittings)
    .where(and(eq(sittings.learnerId, learnerId), eq(sittings.organizationId, organizationId)))
    .orderBy(desc(sittings.createdAt), desc(sittings.id))
    .limit(limit);
}

/** Hands a sitting in; changes nothing where it is handed in already, or someone else's. */
export function handingIn(db: Db, learnerId: string, sittingId: string, at: Date): Statement {
  return db
    .update(sittings)
    .set({ handedInAt: at })
    .where(and(eq(sittings.id, sittingId), eq(sittings.learnerId, learnerId), isNull(sittings.handedInAt)));
}

/** An open sitting of a learner's whose time is not over. */
export function isOpenFor(learnerId: string, sittingId: string, at: Date): SQL | undefined {
  const inTime = or(isNull(sittings.closesAt), gt(sittings.closesAt, at));
  return and(eq(sittings.id, sittingId), eq(sittings.learnerId, learnerId), isNull(sittings.handedInAt), inTime);
}

/** Sittings of a learner that ran out of time and were not handed in. */
export async function listOverdue(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
  at: Date,
): Promise<Sitting[]> {
  const own = and(eq(sittings.learnerId, learnerId), eq(sittings.organizationId, organizationId));
  return db
    .select()
    .from(sittings)
    .where(and(own, isNull(sittings.handedInAt), lte(sittings.closesAt, at)));
}
