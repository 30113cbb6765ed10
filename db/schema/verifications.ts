import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Short-lived values of better-auth's. */
export const verifications = sqliteTable(
  'verifications',
  {
    id: text().primaryKey(),
    identifier: text().notNull(),
    value: text().notNull(),
    expiresAt: integer({ mode: 'timestamp_ms' }).notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    updatedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('verifications_by_identifier').on(table.identifier)],
);
