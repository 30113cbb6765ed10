import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Role } from '../../lib/accounts/roles';
import { classes } from './classes';
import { organizations } from './organizations';
import { users } from './users';

/** Links that work once: into an organisation, or to a new password. What stands in the link itself is not kept. */
export const links = sqliteTable(
  'links',
  {
    /** Random, for lists and the log; opens nothing. */
    id: text().primaryKey(),
    /** SHA-256 of what the link carries. */
    tokenHash: text().notNull().unique(),
    kind: text({ enum: ['invitation', 'reset'] }).notNull(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    /** Whose password is set anew; null for an invitation. */
    personId: text().references(() => users.id),
    /** What an invited person becomes; null for a reset. */
    roles: text({ mode: 'json' }).$type<Role[]>(),
    /** The class that an invited person joins; null for none. */
    classId: text().references(() => classes.id),
    /** Where it was sent; null where it was handed over. */
    email: text(),
    madeBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    endsAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null while it has not been used. */
    usedAt: integer({ mode: 'timestamp_ms' }),
    /** When somebody took it back; null otherwise. */
    withdrawnAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('links_of_organization').on(table.organizationId, table.createdAt)],
);
