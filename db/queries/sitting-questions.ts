import { and, asc, eq, exists, notExists, sql } from 'drizzle-orm';
import type { Answer } from '../../lib/questions/answer';
import type { Mark } from '../../lib/questions/mark';
import type { QuestionSpec } from '../../lib/questions/question';
import type { Db } from '../client';
import { manualMarks, questionMarks, sittingAnswers, sittingQuestions, sittings, writtenVersions } from '../schema';
import type { Statement } from '../together';
import { isOpenFor } from './sittings';

export type SittingQuestion = typeof sittingQuestions.$inferSelect;
export type NewSittingQuestion = typeof sittingQuestions.$inferInsert;
export type SittingAnswer = typeof sittingAnswers.$inferSelect;
export type QuestionMark = typeof questionMarks.$inferSelect;
export type NewQuestionMark = typeof questionMarks.$inferInsert;

/** Asks a question at a place; changes nothing where one is asked there already. */
export function askingQuestion(db: Db, question: NewSittingQuestion): Statement {
  return db.insert(sittingQuestions).values(question).onConflictDoNothing();
}

/** Draws a question that nobody has answered yet under another version. */
export function redrawingQuestion(
  db: Db,
  { sittingId, place }: Pick<SittingQuestion, 'sittingId' | 'place'>,
  version: Pick<SittingQuestion, 'questionVersion' | 'questionHash'>,
): Statement {
  return db
    .update(sittingQuestions)
    .set(version)
    .where(and(eq(sittingQuestions.sittingId, sittingId), eq(sittingQuestions.place, place)));
}

/** Every question of a learner's sitting, by place. */
export async function listSittingQuestions(db: Db, learnerId: string, sittingId: string): Promise<SittingQuestion[]> {
  const rows = await db
    .select({ question: sittingQuestions })
    .from(sittingQuestions)
    .innerJoin(sittings, eq(sittings.id, sittingQuestions.sittingId))
    .where(and(eq(sittingQuestions.sittingId, sittingId), eq(sittings.learnerId, learnerId)))
    .orderBy(asc(sittingQuestions.place));
  return rows.map(({ question }) => question);
}

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
  /** An answer counts that was on its way when the time ran out: it must come before `closesAt` has passed by this. */
  closedBy: Date;
}

/**
 * Adds an answer to a question of a learner's open sitting. Changes nothing when the sitting is handed in or its time is over,
 * when the question is marked, when the key has answered already, or when there is no such question of theirs.
 */
export function answeringQuestion(db: Db, learnerId: string, answer: NewAnswer): Statement {
  const { sittingId, place } = answer;
  const last = db
    .select({ last: sql<number>`coalesce(max(${sittingAnswers.seq}), 0) + 1` })
    .from(sittingAnswers)
    .where(eq(sittingAnswers.sittingId, sittingId));
  const one = { one: sql`1` };
  const asked = db
    .select(one)
    .from(sittingQuestions)
    .where(and(eq(sittingQuestions.sittingId, sittingId), eq(sittingQuestions.place, place)));
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
        .where(and(isOpenFor(learnerId, sittingId, answer.closedBy), exists(asked), notExists(marked))),
    )
    .onConflictDoNothing();
}

/** Marks a question once; changes nothing where it is marked. */
export function markingQuestion(db: Db, mark: NewQuestionMark): Statement {
  return db.insert(questionMarks).values(mark).onConflictDoNothing();
}

export interface MarkedPlace extends QuestionMark {
  /** What a person gave for free text last; null where nobody has. */
  manual: { score: number; comment: string } | null;
}

/** Every mark of a learner's sitting, by place. */
export async function listQuestionMarks(db: Db, learnerId: string, sittingId: string): Promise<MarkedPlace[]> {
  const marks = await db
    .select({ mark: questionMarks })
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .where(and(eq(questionMarks.sittingId, sittingId), eq(sittings.learnerId, learnerId)))
    .orderBy(asc(questionMarks.place));
  const given = await db
    .select()
    .from(manualMarks)
    .where(eq(manualMarks.sittingId, sittingId))
    .orderBy(asc(manualMarks.seq));
  return marks.map(({ mark }) => {
    const manual = given.filter(({ place }) => place === mark.place).at(-1);
    return { ...mark, manual: manual ? { score: manual.score, comment: manual.comment } : null };
  });
}

/** Sets or takes the flag of a question in a learner's open sitting. */
export async function flagQuestion(
  db: Db,
  learnerId: string,
  { sittingId, place, flagged, at }: { sittingId: string; place: number; flagged: boolean; at: Date },
): Promise<boolean> {
  const open = db
    .select({ one: sql`1` })
    .from(sittings)
    .where(isOpenFor(learnerId, sittingId, at));
  const rows = await db
    .update(sittingQuestions)
    .set({ flagged })
    .where(and(eq(sittingQuestions.sittingId, sittingId), eq(sittingQuestions.place, place), exists(open)))
    .returning({ place: sittingQuestions.place });
  return rows.length > 0;
}

/** What became of one question, for the schedule of reviews. */
export interface ReviewedLine {
  spec: QuestionSpec | null;
  /** The written question, whatever its version; null for a generated one. */
  writtenId: string | null;
  /** As it was marked at once; null while a person has to. */
  mark: Mark;
  markedAt: Date;
}

/** Everything of a learner's in an organisation that was marked, in the order in which it was. */
export async function listReviewed(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
): Promise<ReviewedLine[]> {
  return db
    .select({
      spec: sittingQuestions.spec,
      writtenId: writtenVersions.questionId,
      mark: questionMarks.mark,
      markedAt: questionMarks.markedAt,
    })
    .from(sittings)
    .innerJoin(questionMarks, eq(questionMarks.sittingId, sittings.id))
    .innerJoin(
      sittingQuestions,
      and(eq(sittingQuestions.sittingId, questionMarks.sittingId), eq(sittingQuestions.place, questionMarks.place)),
    )
    .leftJoin(writtenVersions, eq(writtenVersions.id, sittingQuestions.writtenVersionId))
    .where(and(eq(sittings.learnerId, learnerId), eq(sittings.organizationId, organizationId)))
    .orderBy(asc(questionMarks.markedAt), asc(questionMarks.place));
}
