import { and, asc, eq, exists, notExists, sql } from 'drizzle-orm';
import type { Db } from '../client';
import { questionMarks, sittingQuestions, sittings } from '../schema';
import type { Statement } from '../together';
import { isOpenFor } from './sittings';

export type SittingQuestion = typeof sittingQuestions.$inferSelect;
export type NewSittingQuestion = Omit<SittingQuestion, 'flagged'>;

/** A place of a sitting. */
export interface PlaceKey {
  sittingId: string;
  place: number;
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

/** Asks a question of a sitting that is just being started. */
export function askingQuestion(db: Db, question: NewSittingQuestion): Statement {
  return db.insert(sittingQuestions).values(question);
}

/**
 * Asks the next question of a learner's open sitting. Undefined, and nothing changed, when the one before is not marked,
 * when another tab asked it first, when the sitting is handed in, or when it is missing or someone else's.
 */
export async function recordNextQuestion(
  db: Db,
  learnerId: string,
  question: NewSittingQuestion,
): Promise<SittingQuestion | undefined> {
  const { sittingId, place, askedAt } = question;
  const before = db
    .select({ one: sql`1` })
    .from(questionMarks)
    .where(isPlace(questionMarks, { sittingId, place: place - 1 }));
  const column = <T>(name: keyof typeof sittingQuestions.$inferSelect, value: T) =>
    sql<T>`${sql.param(value, sittingQuestions[name])}`.as(sittingQuestions[name].name);
  const [row] = await db
    .insert(sittingQuestions)
    .select(
      db
        .select({
          sittingId: sittings.id,
          place: column('place', place),
          spec: column('spec', question.spec),
          writtenVersionId: column('writtenVersionId', question.writtenVersionId),
          seed: column('seed', question.seed),
          questionVersion: column('questionVersion', question.questionVersion),
          questionHash: column('questionHash', question.questionHash),
          flagged: column('flagged', false),
          askedAt: column('askedAt', askedAt),
        })
        .from(sittings)
        .where(and(isOpenFor(learnerId, sittingId, askedAt), exists(before))),
    )
    .onConflictDoNothing()
    .returning();
  return row;
}

/**
 * Asks another question at a place whose question can no longer be drawn as it was; answers from before `askedAt` were to
 * the one that is gone. Changes nothing where the place is marked, or was asked anew already.
 */
export function askingAnew(
  db: Db,
  question: NewSittingQuestion,
  gone: Pick<SittingQuestion, 'questionHash'>,
): Statement {
  const { sittingId: _, place: __, ...changes } = question;
  const marked = db.select({ one: sql`1` }).from(questionMarks).where(isPlace(questionMarks, question));
  return db
    .update(sittingQuestions)
    .set(changes)
    .where(
      and(isPlace(sittingQuestions, question), eq(sittingQuestions.questionHash, gone.questionHash), notExists(marked)),
    );
}

/** Sets or takes the flag of a question in a learner's open sitting; false when there is no such question of theirs. */
export async function recordFlag(
  db: Db,
  learnerId: string,
  { flagged, at, ...key }: PlaceKey & { flagged: boolean; at: Date },
): Promise<boolean> {
  const open = db
    .select({ one: sql`1` })
    .from(sittings)
    .where(isOpenFor(learnerId, key.sittingId, at));
  const rows = await db
    .update(sittingQuestions)
    .set({ flagged })
    .where(and(isPlace(sittingQuestions, key), exists(open)))
    .returning({ place: sittingQuestions.place });
  return rows.length > 0;
}

function isPlace(table: typeof sittingQuestions | typeof questionMarks, { sittingId, place }: PlaceKey) {
  return and(eq(table.sittingId, sittingId), eq(table.place, place));
}
