import { and, asc, eq, not, notExists, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { acts, attempts, calls } from '../schema';
import type { OpenAct } from '../schema/acts';
import { isInIntakeOver } from './intakes';
import { isInTurnOver } from './turns';

export type ActRow = typeof acts.$inferSelect;

/** Everything a learner did in an attempt of theirs, in order. The call is not among it. */
export async function listActs(db: Db, learnerId: string, attemptId: string): Promise<ActRow[]> {
  const rows = await db
    .select({ act: acts })
    .from(acts)
    .innerJoin(attempts, eq(attempts.id, acts.attemptId))
    .where(and(eq(acts.attemptId, attemptId), eq(attempts.learnerId, learnerId)))
    .orderBy(asc(acts.seq));
  return rows.map((row) => row.act);
}

export interface NewAct {
  attemptId: string;
  /** One more than the last act the writer knew of. */
  seq: number;
  key: string;
  body: OpenAct;
  createdAt: Date;
}

/**
 * Adds an act to a learner's open attempt, in one statement.
 * Undefined, and nothing changed, when the call is made, when another act took the number or the key, when it is part of a
 * turn or a new-hire check that is over, or when the attempt is missing or someone else's.
 *
 * @param openAt  A turn or a new-hire check that ended by then is over.
 */
export async function recordAct(
  db: Db,
  learnerId: string,
  act: NewAct,
  openAt = act.createdAt,
): Promise<ActRow | undefined> {
  const called = db.select({ one: sql`1` }).from(calls).where(eq(calls.attemptId, attempts.id));
  const [row] = await db
    .insert(acts)
    .select(
      db
        .select({
          attemptId: attempts.id,
          seq: sql<number>`${act.seq}`.as('seq'),
          key: sql<string>`${act.key}`.as('key'),
          kind: sql<NewAct['body']['kind']>`${act.body.kind}`.as('kind'),
          body: sql<NewAct['body']>`${sql.param(act.body, acts.body)}`.as('body'),
          createdAt: sql<Date>`${sql.param(act.createdAt, acts.createdAt)}`.as('created_at'),
        })
        .from(attempts)
        .where(
          and(
            eq(attempts.id, act.attemptId),
            eq(attempts.learnerId, learnerId),
            notExists(called),
            not(isInTurnOver(db, openAt)),
            not(isInIntakeOver(db, openAt)),
          ),
        ),
    )
    .onConflictDoNothing()
    .returning();
  return row;
}
