import { and, asc, count, eq, isNotNull, type SQL, sql } from 'drizzle-orm';
import type { QuestionSpec } from '../../lib/questions/question';
import type { Db } from '../client';
import { manualMarks, questionMarks, sittingQuestions, sittings, writtenVersions } from '../schema';
import { followedBy, type Statement } from '../together';
import { owingQuestion } from './evidence-due';

export type QuestionMark = typeof questionMarks.$inferSelect;

/** What a person gave for free text. */
export interface ManualMark {
  score: number;
  comment: string;
}

/** A mark with what a person gave last, where one had to; null where nobody has. */
export interface MarkWithManual extends QuestionMark {
  manual: ManualMark | null;
}

/** Marks a question once, and owes its evidence; changes nothing where it is marked. */
export function marking(db: Db, mark: QuestionMark): Statement {
  const once = db.insert(questionMarks).values(mark).onConflictDoNothing();
  return followedBy(once, [owingQuestion(db, mark, mark.markedAt)]);
}

/** Every mark of a learner's sitting, by place. */
export async function listMarks(db: Db, learnerId: string, sittingId: string): Promise<MarkWithManual[]> {
  const own = and(eq(sittings.id, sittingId), eq(sittings.learnerId, learnerId));
  const rows = await db
    .select({ mark: questionMarks })
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .where(own)
    .orderBy(asc(questionMarks.place));
  const given = await db
    .select({ place: manualMarks.place, score: manualMarks.score, comment: manualMarks.comment })
    .from(manualMarks)
    .innerJoin(sittings, eq(sittings.id, manualMarks.sittingId))
    .where(own)
    .orderBy(asc(manualMarks.seq));
  const last = new Map(given.map(({ place, score, comment }) => [place, { score, comment }]));
  return rows.map(({ mark }) => ({ ...mark, manual: last.get(mark.place) ?? null }));
}

/** What became of one question, for the schedule of reviews. */
export interface MarkedLine {
  sittingId: string;
  spec: QuestionSpec | null;
  /** The written question, whatever its version; null for a generated one. */
  writtenId: string | null;
  credit: number;
  markedAt: Date;
}

/** A learner's answers in an organisation that are marked, in the order in which they were. Free text counts once a person has marked it. */
export async function listMarked(
  db: Db,
  { learnerId, organizationId }: { learnerId: string; organizationId: string },
): Promise<MarkedLine[]> {
  const credit = countedCredit(db);
  return db
    .select({
      sittingId: sittings.id,
      spec: sittingQuestions.spec,
      writtenId: writtenVersions.questionId,
      credit: sql<number>`${credit}`,
      markedAt: questionMarks.markedAt,
    })
    .from(sittings)
    .innerJoin(questionMarks, eq(questionMarks.sittingId, sittings.id))
    .innerJoin(
      sittingQuestions,
      and(eq(sittingQuestions.sittingId, questionMarks.sittingId), eq(sittingQuestions.place, questionMarks.place)),
    )
    .leftJoin(writtenVersions, eq(writtenVersions.id, sittingQuestions.writtenVersionId))
    .where(
      and(
        eq(sittings.learnerId, learnerId),
        eq(sittings.organizationId, organizationId),
        isNotNull(questionMarks.answer),
        isNotNull(credit),
      ),
    )
    .orderBy(asc(questionMarks.markedAt), asc(questionMarks.sittingId), asc(questionMarks.place));
}

/** How many marks the sitting of a query around this one has, of those that a condition lets through. */
export function marksOfSitting(db: Db, condition?: SQL) {
  return db
    .select({ value: count() })
    .from(questionMarks)
    .where(and(eq(questionMarks.sittingId, sittings.id), condition));
}

/** 0…1 as it counts: what a person gave last, or what was marked at once; null while a person has to. */
export function countedCredit(db: Db): SQL<number | null> {
  const given = db
    .select({ score: manualMarks.score })
    .from(manualMarks)
    .where(and(eq(manualMarks.sittingId, questionMarks.sittingId), eq(manualMarks.place, questionMarks.place)))
    .orderBy(sql`${manualMarks.seq} desc`)
    .limit(1);
  const credit = sql`json_extract(${questionMarks.mark}, '$.credit')`;
  // Looked into only where a person has to mark it: all that was asked is long.
  const steps = sql`json_extract(${questionMarks.asked}, '$.steps')`;
  return sql`case when ${credit} is null then (${given}) * 1.0 / ${steps} else ${credit} end`;
}
