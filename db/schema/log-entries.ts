import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { LogDetails, LogEvent } from '../../lib/accounts/log-events';

/**
 * Who did what to whom, when. Rows are added and never changed or removed: triggers refuse it. People stand in it by
 * their ids alone, so that a person can be erased and the log still stands.
 */
export const logEntries = sqliteTable(
  'log_entries',
  {
    /** Order of writing. Told to those who read the organisation's log, as the place where a page ends, and to nobody else. */
    seq: integer().primaryKey({ autoIncrement: true }),
    at: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null for what concerns the whole installation. */
    organizationId: text(),
    /** Null for what nobody signed in did, such as the console or a refused sign-in. */
    actorId: text(),
    event: text().$type<LogEvent>().notNull(),
    /** To whom it was done; null when to nobody. */
    personId: text(),
    /** Codes and ids, never names. */
    details: text({ mode: 'json' }).$type<LogDetails>().notNull(),
  },
  (table) => [
    index('log_of_organization').on(table.organizationId, table.seq),
    index('log_of_person').on(table.personId),
  ],
);
