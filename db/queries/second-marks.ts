import { and, asc, desc, eq, exists, isNull, lte, ne, notExists, type SQL, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { assignments, manualMarks, questionMarks, secondMarks, sittings, turns, users } from '../schema';
import { followedBy, type Statement } from '../together';
import { owingQuestion } from './evidence-due';
import type { FreeText, TextKey } from './manual-marks';
import { waitsForPerson } from './review-work';

export type SecondMark = typeof secondMarks.$inferSelect;

/** Free text that waits for its second mark, with the assignment that asks for one. */
export interface AwaitedText extends FreeText {
  assignmentId: string;
}

interface Marker {
  organizationId: string;
  /** Whoever is to give the second mark. */
  markerId: string;
}

/** Answers of an organisation that somebody may give the second mark to, those marked first the longest ago first. */
export async function listAwaitingSecond(db: Db, marker: Marker, limit: number): Promise<AwaitedText[]> {
  return db
    .select(text)
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .innerJoin(turns, eq(turns.sittingId, sittings.id))
    .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
    .where(mayGiveSecond(db, marker))
    .orderBy(asc(questionMarks.markedAt), asc(questionMarks.sittingId), asc(questionMarks.place))
    .limit(limit);
}

/** One of those answers; undefined where somebody may not give it the second mark. */
export async function findAwaitingSecond(
  db: Db,
  marker: Marker,
  { sittingId, place }: TextKey,
): Promise<AwaitedText | undefined> {
  const [row] = await db
    .select(text)
    .from(questionMarks)
    .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
    .innerJoin(turns, eq(turns.sittingId, sittings.id))
    .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
    .where(and(eq(questionMarks.sittingId, sittingId), eq(questionMarks.place, place), mayGiveSecond(db, marker)));
  return row;
}

/**
 * Gives the second mark once, and owes the evidence, which waits for it. Changes nothing where there is one, where nobody gave the first, or where whoever gives it gave
 * the first or is who answered.
 */
export function givingSecondMark(db: Db, mark: SecondMark): Statement {
  const { sittingId, place, score, comment, markedBy, markedAt } = mark;
  const column = <T>(name: keyof SecondMark, value: T) =>
    sql<T>`${sql.param(value, secondMarks[name])}`.as(secondMarks[name].name);
  const given = db
    .insert(secondMarks)
    .select(
      db
        .select({
          sittingId: column('sittingId', sittingId),
          place: column('place', place),
          score: column('score', score),
          comment: column('comment', comment),
          markedBy: column('markedBy', markedBy),
          markedAt: column('markedAt', markedAt),
        })
        .from(questionMarks)
        .innerJoin(sittings, eq(sittings.id, questionMarks.sittingId))
        .innerJoin(turns, eq(turns.sittingId, sittings.id))
        .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
        .where(
          and(
            eq(questionMarks.sittingId, sittingId),
            eq(questionMarks.place, place),
            mayGiveSecond(db, { markerId: markedBy }),
          ),
        ),
    )
    .onConflictDoNothing();
  return followedBy(given, [owingQuestion(db, mark, markedAt)]);
}

/** The second mark of an answer; undefined while there is none. */
export async function findSecondMark(db: Db, { sittingId, place }: TextKey): Promise<SecondMark | undefined> {
  const [row] = await db
    .select()
    .from(secondMarks)
    .where(and(eq(secondMarks.sittingId, sittingId), eq(secondMarks.place, place)));
  return row;
}

/** Whether an answer is one that asks for a second mark and has none: until then nobody else sees the first. */
export async function awaitsSecond(db: Db, { sittingId, place }: TextKey): Promise<boolean> {
  const rows = await db
    .select({ place: questionMarks.place })
    .from(questionMarks)
    .innerJoin(turns, eq(turns.sittingId, questionMarks.sittingId))
    .innerJoin(assignments, eq(assignments.id, turns.assignmentId))
    .where(
      and(
        eq(questionMarks.sittingId, sittingId),
        eq(questionMarks.place, place),
        waitsForPerson,
        asksForSecond,
        notExists(secondOf(db)),
      ),
    );
  return rows.length > 0;
}

/** An answer with both of its marks. */
export interface MarkedTwice extends TextKey {
  learnerId: string;
  steps: number;
  /** As it stood when the second was given, which did not see it. */
  first: number;
  second: number;
  firstMarker: string | null;
  secondMarker: string | null;
  comment: string;
}

/** Answers at an assignment that two people marked, those furthest apart first. */
export async function listMarkedTwice(db: Db, assignmentId: string): Promise<MarkedTwice[]> {
  const rows = await db
    .select({
      sittingId: secondMarks.sittingId,
      place: secondMarks.place,
      learnerId: turns.learnerId,
      steps: sql<number>`json_extract(${questionMarks.asked}, '$.steps')`,
      second: secondMarks.score,
      comment: secondMarks.comment,
      secondMarker: users.name,
      markedBy: secondMarks.markedBy,
      markedAt: secondMarks.markedAt,
    })
    .from(secondMarks)
    .innerJoin(turns, eq(turns.sittingId, secondMarks.sittingId))
    .innerJoin(
      questionMarks,
      and(eq(questionMarks.sittingId, secondMarks.sittingId), eq(questionMarks.place, secondMarks.place)),
    )
    .leftJoin(users, eq(users.id, secondMarks.markedBy))
    .where(eq(turns.assignmentId, assignmentId))
    .orderBy(asc(secondMarks.markedAt), asc(secondMarks.sittingId));
  const pairs: MarkedTwice[] = [];
  for (const { markedBy, markedAt, ...row } of rows) {
    const first = await findFirstOf(db, { ...row, markedBy, markedAt });
    if (first) pairs.push({ ...row, first: first.score, firstMarker: first.name });
  }
  return pairs.sort((one, other) => Math.abs(other.first - other.second) - Math.abs(one.first - one.second));
}

/** What another person had given last when the second mark was given. */
async function findFirstOf(
  db: Db,
  { sittingId, place, markedBy, markedAt }: Pick<SecondMark, 'sittingId' | 'place' | 'markedBy' | 'markedAt'>,
): Promise<{ score: number; name: string | null } | undefined> {
  const [row] = await db
    .select({ score: manualMarks.score, name: users.name })
    .from(manualMarks)
    .leftJoin(users, eq(users.id, manualMarks.markedBy))
    .where(
      and(
        eq(manualMarks.sittingId, sittingId),
        eq(manualMarks.place, place),
        ne(manualMarks.markedBy, markedBy),
        lte(manualMarks.markedAt, markedAt),
      ),
    )
    .orderBy(desc(manualMarks.seq))
    .limit(1);
  return row;
}

/** Assignments of an organisation that ask for a second mark, the last to close first. */
export async function listSecondMarked(
  db: Db,
  organizationId: string,
  limit: number,
): Promise<(typeof assignments.$inferSelect)[]> {
  return db
    .select()
    .from(assignments)
    .where(and(eq(assignments.organizationId, organizationId), isNull(assignments.archivedAt), asksForSecond))
    .orderBy(desc(assignments.closesAt), desc(assignments.id))
    .limit(limit);
}

const asksForSecond = sql`json_extract(${assignments.rules}, '$.secondMarker') = 1`;

const text = {
  sittingId: questionMarks.sittingId,
  place: questionMarks.place,
  learnerId: sittings.learnerId,
  demo: sittings.demo,
  asked: questionMarks.asked,
  answer: questionMarks.answer,
  markedAt: questionMarks.markedAt,
  assignmentId: assignments.id,
};

function mayGiveSecond(
  db: Db,
  { organizationId, markerId }: { organizationId?: string; markerId: string },
): SQL | undefined {
  const first = db.select({ one: sql`1` }).from(manualMarks).where(at(manualMarks));
  const byThem = db
    .select({ one: sql`1` })
    .from(manualMarks)
    .where(and(at(manualMarks), eq(manualMarks.markedBy, markerId)));
  return and(
    organizationId === undefined ? undefined : eq(sittings.organizationId, organizationId),
    ne(sittings.learnerId, markerId),
    waitsForPerson,
    asksForSecond,
    exists(first),
    notExists(byThem),
    notExists(secondOf(db)),
  );
}

function secondOf(db: Db) {
  return db.select({ one: sql`1` }).from(secondMarks).where(at(secondMarks));
}

function at(table: typeof manualMarks | typeof secondMarks) {
  return and(eq(table.sittingId, questionMarks.sittingId), eq(table.place, questionMarks.place));
}
