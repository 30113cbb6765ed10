import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Whoever can sign in, once for the whole installation. Columns up to `updatedAt` are those that better-auth asks for. */
export const users = sqliteTable('users', {
  id: text().primaryKey(),
  name: text().notNull(),
  /** What one signs in with: an e-mail, or a user name with `.invalid` behind it (lib/accounts/sign-in-name.ts). */
  email: text().notNull().unique(),
  emailVerified: integer({ mode: 'boolean' }).notNull().default(false),
  /** Always null: people have no pictures here. */
  image: text(),
  createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
  updatedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  /** Looks after the installation itself: back-ups and further organisations. */
  keeper: integer({ mode: 'boolean' }).notNull().default(false),
});
