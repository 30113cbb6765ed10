import { index, integer, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { parts } from '../../lib/grading/grade';
import { attempts } from './attempts';
import { organizations } from './organizations';
import { sittings } from './sittings';

/** What a row of review is about: an attempt at a case, or a place of a sitting. Exactly one of the two is there. */
const about = {
  attemptId: text().references(() => attempts.id),
  sittingId: text().references(() => sittings.id),
  /** Of the sitting; null for an attempt. */
  place: integer(),
};

/** What somebody wrote to a learner's work. */
export const comments = sqliteTable(
  'comments',
  {
    id: text().primaryKey(),
    ...about,
    /** The act of an attempt that it is about; null for the whole. */
    seq: integer(),
    text: text().notNull(),
    writtenBy: text().notNull(),
    writtenAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('comments_on_attempt').on(table.attemptId), index('comments_on_sitting').on(table.sittingId)],
);

/** Points that somebody gave in the place of those computed. Rows are added and never changed; the last of a part counts. */
export const overrides = sqliteTable(
  'overrides',
  {
    id: text().primaryKey(),
    ...about,
    /** Of an attempt's grade; null for a question, which is one part. */
    part: text({ enum: parts }),
    /** Of the part; of a question's 0…steps. Null takes an earlier one back. */
    points: real(),
    reason: text().notNull(),
    givenBy: text().notNull(),
    givenAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('overrides_on_attempt').on(table.attemptId), index('overrides_on_sitting').on(table.sittingId)],
);

export const appealStates = ['open', 'upheld', 'declined', 'withdrawn'] as const;

/** A learner asking that a mark be looked at again. */
export const appeals = sqliteTable(
  'appeals',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    learnerId: text().notNull(),
    ...about,
    note: text().notNull(),
    state: text({ enum: appealStates }).notNull(),
    madeAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** By when it has to be answered. */
    dueAt: integer({ mode: 'timestamp_ms' }).notNull(),
    answer: text(),
    decidedBy: text(),
    decidedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [
    index('appeals_of_organization').on(table.organizationId, table.state, table.dueAt),
    index('appeals_of_learner').on(table.learnerId),
  ],
);

/** What a second person gave for free text, without seeing what the first gave. */
export const secondMarks = sqliteTable(
  'second_marks',
  {
    sittingId: text()
      .notNull()
      .references(() => sittings.id),
    place: integer().notNull(),
    /** 0…steps of the question. */
    score: integer().notNull(),
    comment: text().notNull(),
    markedBy: text().notNull(),
    markedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [unique('second_marks_once').on(table.sittingId, table.place)],
);
