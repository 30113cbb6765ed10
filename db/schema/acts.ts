import { integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { ReasonedHint } from '../../lib/coaching/hint';
import type { FindingAct, ReadingAct } from '../../lib/grading/acts';
import { attempts } from './attempts';

/** What may be done while an attempt is open. */
export type OpenAct = ReadingAct | FindingAct | ReasonedHint;

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
    kind: text({ enum: ['reading', 'finding', 'hint'] }).notNull(),
    body: text({ mode: 'json' }).$type<OpenAct>().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.attemptId, table.seq] }),
    unique('acts_once').on(table.attemptId, table.key),
  ],
);
