import { index, integer, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { organizations } from './organizations';

/**
 * How questions are asked. `drill`: on one topic, told at once; `review`: what is due, told at once; `check`: nothing is told
 * before it is handed in.
 */
export const sittingModes = ['drill', 'review', 'check'] as const;

/** A learner at questions. */
export const sittings = sqliteTable(
  'sittings',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    learnerId: text().notNull(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    /** Made by the client, so that a second press of the button starts nothing new. */
    key: text().notNull(),
    mode: text({ enum: sittingModes }).notNull(),
    /** Topics that were chosen; all where none were. */
    topics: text({ mode: 'json' }).$type<readonly string[]>().notNull(),
    /** Made by the seed with invented answers, and shown as such. */
    demo: integer({ mode: 'boolean' }).notNull().default(false),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** By the server's clock; null without a limit. */
    closesAt: integer({ mode: 'timestamp_ms' }),
    /** Null while it is open. */
    handedInAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [
    unique('sittings_once').on(table.learnerId, table.key),
    index('sittings_newest').on(table.learnerId, table.createdAt),
  ],
);
