import { index, integer, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { SetBody } from '../../lib/sets/set-body';
import { organizations } from './organizations';

/** Cases and questions that belong together. What it consists of is in its versions. */
export const sets = sqliteTable(
  'sets',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    createdBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null while nobody but whoever made it sees it. */
    sharedAt: integer({ mode: 'timestamp_ms' }),
    /** Null while it is in use. */
    archivedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('sets_of_organization').on(table.organizationId, table.createdAt)],
);

/** The last version is the one that is worked on; one that was assigned never changes. */
export const setVersions = sqliteTable(
  'set_versions',
  {
    id: text().primaryKey(),
    setId: text()
      .notNull()
      .references(() => sets.id),
    /** From 1. */
    number: integer().notNull(),
    body: text({ mode: 'json' }).$type<SetBody>().notNull(),
    writtenBy: text().notNull(),
    changedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** When it was first assigned; null until then. */
    frozenAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [unique('set_versions_once').on(table.setId, table.number)],
);
