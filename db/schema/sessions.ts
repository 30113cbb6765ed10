import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { users } from './users';

/** Where somebody is signed in. Written by better-auth. */
export const sessions = sqliteTable(
  'sessions',
  {
    id: text().primaryKey(),
    token: text().notNull().unique(),
    userId: text()
      .notNull()
      .references(() => users.id, { onDelete: 'cascade' }),
    /** The organisation being worked in; null until one is chosen, which takes the first. */
    activeOrganizationId: text(),
    /** Null where the server could not tell. */
    ipAddress: text(),
    userAgent: text(),
    expiresAt: integer({ mode: 'timestamp_ms' }).notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    updatedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('sessions_of_user').on(table.userId)],
);
