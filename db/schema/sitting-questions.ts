import { index, integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { Answer } from '../../lib/questions/answer';
import type { Mark } from '../../lib/questions/mark';
import type { QuestionBody, QuestionSpec } from '../../lib/questions/question';
import { sittings } from './sittings';
import { writtenVersions } from './written-questions';

/** Which question is asked at a place of a sitting. The question itself is a function of this. */
export const sittingQuestions = sqliteTable(
  'sitting_questions',
  {
    sittingId: text()
      .notNull()
      .references(() => sittings.id),
    /** From 1. */
    place: integer().notNull(),
    /** A generated question; null for a written one. */
    spec: text({ mode: 'json' }).$type<QuestionSpec>(),
    /** A written question; null for a generated one. */
    writtenVersionId: text().references(() => writtenVersions.id),
    /** What a written question draws its numbers and its order from. */
    seed: text().notNull(),
    questionVersion: integer().notNull(),
    questionHash: text().notNull(),
    /** To come back to. */
    flagged: integer({ mode: 'boolean' }).notNull().default(false),
    askedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.sittingId, table.place] }),
    index('sitting_questions_of_version').on(table.writtenVersionId),
  ],
);

/** What a learner answered, as it happened; the last counts. Rows are added and never changed. */
export const sittingAnswers = sqliteTable(
  'sitting_answers',
  {
    sittingId: text()
      .notNull()
      .references(() => sittings.id),
    place: integer().notNull(),
    /** Counts from 1 within the sitting, without gaps. */
    seq: integer().notNull(),
    /** Made by the client, so that a retry finds the answer it already gave. */
    key: text().notNull(),
    body: text({ mode: 'json' }).$type<Answer>().notNull(),
    answeredAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.sittingId, table.seq] }),
    unique('sitting_answers_once').on(table.sittingId, table.key),
    index('sitting_answers_of_place').on(table.sittingId, table.place, table.seq),
  ],
);

/** A question as it was marked, with all that was asked, so that later content cannot change what somebody was told. */
export const questionMarks = sqliteTable(
  'question_marks',
  {
    sittingId: text()
      .notNull()
      .references(() => sittings.id),
    place: integer().notNull(),
    /** The answer that counted; null where there was none. */
    answer: text({ mode: 'json' }).$type<Answer>(),
    asked: text({ mode: 'json' }).$type<QuestionBody>().notNull(),
    mark: text({ mode: 'json' }).$type<Mark>().notNull(),
    markedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.sittingId, table.place] })],
);

/** What a person gave for free text. Rows are added and never changed; the last counts. */
export const manualMarks = sqliteTable(
  'manual_marks',
  {
    sittingId: text()
      .notNull()
      .references(() => sittings.id),
    place: integer().notNull(),
    seq: integer().notNull(),
    /** 0…steps of the question. */
    score: integer().notNull(),
    comment: text().notNull(),
    markedBy: text().notNull(),
    markedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.sittingId, table.place, table.seq] })],
);
