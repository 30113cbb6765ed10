import { and, asc, count, desc, eq, exists, isNotNull, ne, notExists, sql } from 'drizzle-orm';
import type { Answer } from '../../lib/questions/answer';
import type { QuestionBody } from '../../lib/questions/question';
import type { Db } from '../client';
import { manualMarks, questionMarks, sittingQuestions, sittings, users, writtenVersions } from '../schema';
import { followedBy, type Statement } from '../together';
import { owingQuestion } from './evidence-due';

/** Free text that a learner of an organisation answered with. */
export interface FreeText {
  sittingId: string;
  place: number;
  learnerId: string;
  /** Invented. */
  demo: boolean;
  asked: QuestionBody;
  /** Null where none was given. */
  answer: Answer | null;
  markedAt: Date;
}

/** Where free text stands. */
export type TextKey = Pick<FreeText, 'sittingId' | 'place'>;

export type ManualMarkRow = typeof manualMarks.$inferSelect;

/** How many answers of an organisation wait for somebody to mark them who did not give them. */
export async function countWaitingTexts(db: Db, organizationId: string, markerId = ''): Promise<number> {
  const [row] = await db
    .select({ value: count() })
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .where(isWaiting(db, organizationId, markerId));
  return row?.value ?? 0;
}

/** The answer of an organisation that has waited longest for somebody who did not give it; undefined when none waits. */
export async function findOldestWaiting(db: Db, organizationId: string, markerId = ''): Promise<FreeText | undefined> {
  const [row] = await db
    .select(text)
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .where(isWaiting(db, organizationId, markerId))
    .orderBy(asc(questionMarks.markedAt), asc(questionMarks.sittingId), asc(questionMarks.place))
    .limit(1);
  return row;
}

/** One answer of an organisation; undefined where there is none, or it is another organisation's. */
export async function findFreeText(
  db: Db,
  organizationId: string,
  { sittingId, place }: TextKey,
): Promise<FreeText | undefined> {
  const named = and(eq(questionMarks.sittingId, sittingId), eq(questionMarks.place, place));
  const [row] = await db
    .select(text)
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .where(and(eq(sittings.organizationId, organizationId), named, isFreeText(db)));
  return row;
}

/** What people gave for an answer, the last first. */
export async function listManualMarks(db: Db, { sittingId, place }: TextKey): Promise<ManualMarkRow[]> {
  return db
    .select()
    .from(manualMarks)
    .where(and(eq(manualMarks.sittingId, sittingId), eq(manualMarks.place, place)))
    .orderBy(desc(manualMarks.seq));
}

/** Who gave the mark of an answer that counts; undefined while nobody has. */
export async function findLastMarker(db: Db, key: TextKey): Promise<string | undefined> {
  const [last] = await listManualMarks(db, key);
  return last?.markedBy;
}

export interface MarkedText extends TextKey {
  score: number;
  asked: QuestionBody;
  markedAt: Date;
  markedBy: string;
  /** Null once they are erased. */
  marker: string | null;
}

/** What was marked last in an organisation, the newest first. */
export async function listMarkedTexts(db: Db, organizationId: string, limit: number): Promise<MarkedText[]> {
  return db
    .select({
      sittingId: manualMarks.sittingId,
      place: manualMarks.place,
      score: manualMarks.score,
      asked: questionMarks.asked,
      markedAt: manualMarks.markedAt,
      markedBy: manualMarks.markedBy,
      marker: users.name,
    })
    .from(manualMarks)
    .innerJoin(sittings, eq(sittings.id, manualMarks.sittingId))
    .innerJoin(questionMarks, at(manualMarks))
    .leftJoin(users, eq(users.id, manualMarks.markedBy))
    .where(eq(sittings.organizationId, organizationId))
    .orderBy(desc(manualMarks.markedAt), desc(manualMarks.seq))
    .limit(limit);
}

/** Adds a mark, and owes the evidence that comes of it; nothing happens when somebody added one of that number first. */
export function addingManualMark(db: Db, mark: ManualMarkRow): Statement {
  const added = db.insert(manualMarks).values(mark).onConflictDoNothing();
  return followedBy(added, [owingQuestion(db, mark, mark.markedAt)]);
}

const text = {
  sittingId: questionMarks.sittingId,
  place: questionMarks.place,
  learnerId: sittings.learnerId,
  demo: sittings.demo,
  asked: questionMarks.asked,
  answer: questionMarks.answer,
  markedAt: questionMarks.markedAt,
};

/** Given, and to a question whose answer a person has to read. */
function isFreeText(db: Db) {
  const asked = db
    .select({ one: sql`1` })
    .from(sittingQuestions)
    .innerJoin(writtenVersions, eq(writtenVersions.id, sittingQuestions.writtenVersionId))
    .where(and(at(sittingQuestions), eq(writtenVersions.form, 'words')));
  return and(isNotNull(questionMarks.answer), exists(asked));
}

function at(table: typeof sittingQuestions | typeof manualMarks) {
  return and(eq(table.sittingId, questionMarks.sittingId), eq(table.place, questionMarks.place));
}

function isWaiting(db: Db, organizationId: string, markerId: string) {
  const ofOthers = and(eq(sittings.organizationId, organizationId), ne(sittings.learnerId, markerId));
  return and(ofOthers, isFreeText(db), isUnmarked(db));
}

function isUnmarked(db: Db) {
  return notExists(db.select({ one: sql`1` }).from(manualMarks).where(at(manualMarks)));
}
