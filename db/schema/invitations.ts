import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { classes } from './classes';
import { organizations } from './organizations';
import { users } from './users';

/** Links into an organisation that work once. Columns up to `createdAt` are those that better-auth asks for. */
export const invitations = sqliteTable(
  'invitations',
  {
    /** Random, for lists and the log; opens nothing. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    inviterId: text()
      .notNull()
      .references(() => users.id),
    /** Where it was sent; null where it was handed over, and once it is used or taken back. */
    email: text(),
    /** What the invited person becomes, as in `members`. */
    role: text().notNull(),
    status: text({ enum: ['pending', 'accepted', 'withdrawn'] }).notNull(),
    expiresAt: integer({ mode: 'timestamp_ms' }).notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** SHA-256 of what the link carries, which itself is not kept. */
    tokenHash: text().notNull().unique(),
    /** The class that the invited person joins; null for none. */
    classId: text().references(() => classes.id),
  },
  (table) => [index('invitations_of_organization').on(table.organizationId, table.createdAt)],
);
