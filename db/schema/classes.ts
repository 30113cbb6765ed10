import { index, integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { organizations } from './organizations';
import { users } from './users';

/** People who learn together. */
export const classes = sqliteTable(
  'classes',
  {
    /** Random. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    name: text().notNull(),
    /** IANA name of the zone whose clock the class goes by; null for the organisation's. */
    timeZone: text(),
    /** Lets whoever has it join; null while the class is closed to joining. */
    joinCode: text().unique(),
    /** Null without a code. */
    joinCodeEndsAt: integer({ mode: 'timestamp_ms' }),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null while the class goes on. */
    archivedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('classes_of_organization').on(table.organizationId)],
);

/** Who is in a class. */
export const classPlaces = sqliteTable(
  'class_places',
  {
    classId: text()
      .notNull()
      .references(() => classes.id),
    userId: text()
      .notNull()
      .references(() => users.id),
    joinedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.classId, table.userId] }), index('class_places_of_user').on(table.userId)],
);
