import { index, integer, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { organizations } from './organizations';
import { users } from './users';

/** A person in an organisation. */
export const members = sqliteTable(
  'members',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    userId: text()
      .notNull()
      .references(() => users.id),
    /** Roles with commas between, as better-auth keeps them (lib/accounts/roles.ts). */
    role: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Since when this person may not come in; null while they may. */
    deactivatedAt: integer({ mode: 'timestamp_ms' }),
    /** When they asked to be erased; null when they have not. */
    erasureAskedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [unique('members_once').on(table.organizationId, table.userId), index('members_of_user').on(table.userId)],
);
