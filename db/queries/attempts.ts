import { type AnyColumn, and, count, desc, eq, isNull, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { acts, attempts, calls } from '../schema';
import type { Statement } from '../together';

export type Attempt = typeof attempts.$inferSelect;
export type NewAttempt = typeof attempts.$inferInsert;

/** Starts an attempt, or returns the one that the same key already started. */
export async function recordAttempt(db: Db, attempt: NewAttempt): Promise<Attempt | undefined> {
  const [made] = await db
    .insert(attempts)
    .values(attempt)
    .onConflictDoNothing({ target: [attempts.learnerId, attempts.key] })
    .returning();
  return made ?? findStarted(db, attempt.learnerId, attempt.key);
}

/** Starts an attempt; changes nothing where the key has started one. */
export function addingAttempt(db: Db, attempt: NewAttempt): Statement {
  return db
    .insert(attempts)
    .values(attempt)
    .onConflictDoNothing({ target: [attempts.learnerId, attempts.key] });
}

/** The attempt that a key has started; undefined where it has started none. */
export async function findStarted(db: Db, learnerId: string, key: string): Promise<Attempt | undefined> {
  const [attempt] = await db
    .select()
    .from(attempts)
    .where(and(eq(attempts.learnerId, learnerId), eq(attempts.key, key)));
  return attempt;
}

/** One learner's attempt; undefined when it is missing or someone else's. */
export async function findAttempt(db: Db, learnerId: string, attemptId: string): Promise<Attempt | undefined> {
  const [attempt] = await db
    .select()
    .from(attempts)
    .where(and(eq(attempts.id, attemptId), eq(attempts.learnerId, learnerId)));
  return attempt;
}

/** Whose an attempt is, and where it was made; undefined when there is none. The door compares. */
export async function findWork(
  db: Db,
  attemptId: string,
): Promise<Pick<Attempt, 'learnerId' | 'organizationId'> | undefined> {
  const [row] = await db
    .select({ learnerId: attempts.learnerId, organizationId: attempts.organizationId })
    .from(attempts)
    .where(eq(attempts.id, attemptId));
  return row;
}

export interface AttemptLine {
  id: string;
  caseCode: string;
  generatorVersion: number;
  contentHash: string;
  demo: boolean;
  createdAt: Date;
  acts: number;
  /** Null while the call is not made. */
  total: number | null;
}

/** Attempts of one learner in an organisation. */
export function ofLearnerIn(organizationId: string, learnerId: string | AnyColumn) {
  return and(eq(attempts.learnerId, learnerId), eq(attempts.organizationId, organizationId));
}

/** A learner's attempts in an organisation, newest first. */
export async function listAttempts(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
  limit: number,
): Promise<AttemptLine[]> {
  return db
    .select({
      id: attempts.id,
      caseCode: attempts.caseCode,
      generatorVersion: attempts.generatorVersion,
      contentHash: attempts.contentHash,
      demo: attempts.demo,
      createdAt: attempts.createdAt,
      acts: sql<number>`(${db.select({ value: count() }).from(acts).where(eq(acts.attemptId, attempts.id))})`,
      total: calls.total,
    })
    .from(attempts)
    .leftJoin(calls, eq(calls.attemptId, attempts.id))
    .where(ofLearnerIn(organizationId, learnerId))
    .orderBy(desc(attempts.createdAt), desc(attempts.id))
    .limit(limit);
}

/** How many attempts everyone has made. */
export async function countAttempts(db: Db): Promise<number> {
  const [row] = await db.select({ value: count() }).from(attempts);
  return row?.value ?? 0;
}

/** Hands what somebody made before there were organisations to a member of one. */
export function adoptingAttempts(db: Db, from: string, to: { learnerId: string; organizationId: string }): Statement {
  return db
    .update(attempts)
    .set(to)
    .where(and(eq(attempts.learnerId, from), isNull(attempts.organizationId)));
}
