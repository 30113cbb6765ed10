import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** How often in a row somebody was refused, so that guessing gets slower. */
export const refusedTries = sqliteTable('refused_tries', {
  /** SHA-256 of what was tried: a sign-in name, or an address that codes and links are tried from. */
  key: text().primaryKey(),
  count: integer().notNull(),
  /** Nothing is tried before this. */
  waitUntil: integer({ mode: 'timestamp_ms' }).notNull(),
});
