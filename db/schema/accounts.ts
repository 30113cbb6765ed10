import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { users } from './users';

/** How somebody proves who they are: here always a password or PIN. Written by better-auth, which hashes it. */
export const accounts = sqliteTable(
  'accounts',
  {
    id: text().primaryKey(),
    accountId: text().notNull(),
    /** Always `credential`. */
    providerId: text().notNull(),
    userId: text()
      .notNull()
      .references(() => users.id, { onDelete: 'cascade' }),
    /** The hash; null while none is set. */
    password: text(),
    /** The rest belongs to sign-in through others, which is not used. */
    accessToken: text(),
    refreshToken: text(),
    idToken: text(),
    accessTokenExpiresAt: integer({ mode: 'timestamp_ms' }),
    refreshTokenExpiresAt: integer({ mode: 'timestamp_ms' }),
    scope: text(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    updatedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('accounts_of_user').on(table.userId)],
);
