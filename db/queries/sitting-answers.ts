import { and, asc, eq, exists, notExists, sql } from 'drizzle-orm';
import type { Answer } from '../../lib/questions/answer';
import type { Db } from '../client';
import { questionMarks, sittingAnswers, sittingQuestions, sittings } from '../schema';
import type { Statement } from '../together';
import { isOpenFor } from './sittings';

export type SittingAnswer = typeof sittingAnswers.$inferSelect;

/** Everything that was answered in a learner's sitting, in order. */
export async function listSittingAnswers(db: Db, learnerId: string, sittingId: string): Promise<SittingAnswer[]> {
  const rows = await db
    .select({ answer: sittingAnswers })
    .from(sittingAnswers)
    .innerJoin(sittings, eq(sittings.id, sittingAnswers.sittingId))
    .where(and(eq(sittingAnswers.sittingId, sittingId), eq(sittings.learnerId, learnerId)))
    .orderBy(asc(sittingAnswers.seq));
  return rows.map(({ answer }) => answer);
}

export interface NewAnswer {
  sittingId: string;
  place: number;
  key: string;
  body: Answer;
  answeredAt: Date;
  /** The sitting must have been open at this moment; earlier than `answeredAt` by what an answer may be on its way. */
  openAt: Date;
  /** When the question was asked that it answers. */
  askedAt: Date;
}

/**
 * Adds an answer to a question of a learner's open sitting. Changes nothing when the sitting is handed in or its time is
 * over, when the question is marked or another is asked in its place, when the key has answered already, or when there is
 * no such question of theirs.
 */
export function answering(db: Db, learnerId: string, answer: NewAnswer): Statement {
  const { sittingId, place, askedAt } = answer;
  const one = { one: sql`1` };
  const last = db
    .select({ last: sql<number>`coalesce(max(${sittingAnswers.seq}), 0) + 1` })
    .from(sittingAnswers)
    .where(eq(sittingAnswers.sittingId, sittingId));
  const asked = db
    .select(one)
    .from(sittingQuestions)
    .where(
      and(
        eq(sittingQuestions.sittingId, sittingId),
        eq(sittingQuestions.place, place),
        eq(sittingQuestions.askedAt, askedAt),
      ),
    );
  const marked = db
    .select(one)
    .from(questionMarks)
    .where(and(eq(questionMarks.sittingId, sittingId), eq(questionMarks.place, place)));
  return db
    .insert(sittingAnswers)
    .select(
      db
        .select({
          sittingId: sittings.id,
          place: sql<number>`${place}`.as('place'),
          seq: sql<number>`(${last})`.as('seq'),
          key: sql<string>`${answer.key}`.as('key'),
          body: sql<Answer>`${sql.param(answer.body, sittingAnswers.body)}`.as('body'),
          answeredAt: sql<Date>`${sql.param(answer.answeredAt, sittingAnswers.answeredAt)}`.as('answered_at'),
        })
        .from(sittings)
        .where(and(isOpenFor(learnerId, sittingId, answer.openAt), exists(asked), notExists(marked))),
    )
    .onConflictDoNothing();
}
