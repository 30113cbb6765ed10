import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Change } from '../../lib/regrading/change';
import { assignments } from './assignments';
import { organizations } from './organizations';

/** A change to the marks of an assignment. Grades are derived from those computed and every regrade that was not undone. */
export const regrades = sqliteTable(
  'regrades',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    assignmentId: text()
      .notNull()
      .references(() => assignments.id),
    change: text({ mode: 'json' }).$type<Change>().notNull(),
    reason: text().notNull(),
    madeBy: text().notNull(),
    madeAt: integer({ mode: 'timestamp_ms' }).notNull(),
    undoneBy: text(),
    /** Null while it counts. */
    undoneAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('regrades_of_assignment').on(table.assignmentId, table.madeAt)],
);

/** A difficulty refitted from answers that somebody accepted in the place of the designed one. Rows are added; the last counts. */
export const calibrations = sqliteTable(
  'calibrations',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    /** What it is the difficulty of, such as a kind of question or a written version. */
    item: text().notNull(),
    /** Logits, on the scale of the designed difficulties. */
    difficulty: real().notNull(),
    standardError: real().notNull(),
    /** Answers that it was fitted from. */
    answers: integer().notNull(),
    acceptedBy: text().notNull(),
    acceptedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('calibrations_of_item').on(table.organizationId, table.item, table.acceptedAt)],
);
