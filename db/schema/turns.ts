import { index, integer, primaryKey, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { assignments } from './assignments';
import { attempts } from './attempts';
import { organizations } from './organizations';
import { sittings } from './sittings';

/** One go of somebody's at an assignment. */
export const turns = sqliteTable(
  'turns',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    assignmentId: text()
      .notNull()
      .references(() => assignments.id),
    learnerId: text().notNull(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    /** From 1. */
    number: integer().notNull(),
    /** Its questions; null for a set without any. */
    sittingId: text().references(() => sittings.id),
    demo: integer({ mode: 'boolean' }).notNull().default(false),
    startedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** By the server's clock, with extra time and what the late rule allows. */
    endsAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null while it is open. */
    handedInAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [
    unique('turns_once').on(table.assignmentId, table.learnerId, table.number),
    unique('turns_of_sitting').on(table.sittingId),
    index('turns_of_learner').on(table.learnerId, table.organizationId),
  ],
);

/** What stands at each place of a turn: an attempt at a case, or a place of the turn's sitting. */
export const turnTasks = sqliteTable(
  'turn_tasks',
  {
    turnId: text()
      .notNull()
      .references(() => turns.id),
    /** As in the set's tasks, from 1. */
    place: integer().notNull(),
    /** Null for a question. */
    attemptId: text()
      .references(() => attempts.id)
      .unique(),
    /** Null for a case. */
    sittingPlace: integer(),
  },
  (table) => [primaryKey({ columns: [table.turnId, table.place] })],
);
