import { integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { FindingAct, ReadingAct } from '../../lib/grading/acts';
import { attempts } from './attempts';

/** What a learner did, as it happened. Rows are added and never changed. */
export const acts = sqliteTable(
  'acts',
  {
    attemptId: text()
      .notNull()
      .references(() => attempts.id),
    /** Counts from 1 within the attempt, without gaps. */
    seq: integer().notNull(),
    /** Made by the client, so that a retry finds the act it already made. */
    key: text().notNull(),
    kind: text({ enum: ['reading', 'finding'] }).notNull(),
    body: text({ mode: 'json' }).$type<ReadingAct | FindingAct>().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.attemptId, table.seq] }),
    unique('acts_once').on(table.attemptId, table.key),
  ],
);
