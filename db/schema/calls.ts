import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { CallAct } from '../../lib/grading/acts';
import type { Grade } from '../../lib/grading/grade';
import { attempts } from './attempts';

/** The act that closes an attempt, with the grade it got. One row an attempt, never changed. */
export const calls = sqliteTable('calls', {
  attemptId: text()
    .primaryKey()
    .references(() => attempts.id),
  seq: integer().notNull(),
  key: text().notNull(),
  body: text({ mode: 'json' }).$type<CallAct>().notNull(),
  grade: text({ mode: 'json' }).$type<Grade>().notNull(),
  /** The grade's total once more, so that a list need not open every grade. */
  total: real().notNull(),
  calledAt: integer({ mode: 'timestamp_ms' }).notNull(),
});
