import { index, integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { AssignmentRules } from '../../lib/assignments/rules';
import { classes } from './classes';
import { organizations } from './organizations';
import { setVersions } from './sets';
import { users } from './users';

/** A version of a set, given to classes and people under rules. */
export const assignments = sqliteTable(
  'assignments',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    setVersionId: text()
      .notNull()
      .references(() => setVersions.id),
    title: text().notNull(),
    rules: text({ mode: 'json' }).$type<AssignmentRules>().notNull(),
    /** What the rules say, as moments. */
    opensAt: integer({ mode: 'timestamp_ms' }).notNull(),
    closesAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Invented, and shown as such. */
    demo: integer({ mode: 'boolean' }).notNull().default(false),
    createdBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null while it stands in the lists. */
    archivedAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('assignments_of_organization').on(table.organizationId, table.closesAt)],
);

/** Classes that an assignment is given to: whoever is in one of them while it is open. */
export const assignedClasses = sqliteTable(
  'assigned_classes',
  {
    assignmentId: text()
      .notNull()
      .references(() => assignments.id),
    classId: text()
      .notNull()
      .references(() => classes.id),
  },
  (table) => [
    primaryKey({ columns: [table.assignmentId, table.classId] }),
    index('assigned_classes_by_class').on(table.classId),
  ],
);

/** People whom an assignment is given to by name, and those who get more time. */
export const assignedPeople = sqliteTable(
  'assigned_people',
  {
    assignmentId: text()
      .notNull()
      .references(() => assignments.id),
    userId: text()
      .notNull()
      .references(() => users.id),
    /** Given to them by name; otherwise they are here for their extra time alone. */
    named: integer({ mode: 'boolean' }).notNull(),
    /** Share of the minutes that they get on top: 0.25 for a quarter more. */
    extraTime: real().notNull().default(0),
  },
  (table) => [
    primaryKey({ columns: [table.assignmentId, table.userId] }),
    index('assigned_people_by_user').on(table.userId),
  ],
);

/** Short messages to somebody at an assignment. */
export const nudges = sqliteTable(
  'nudges',
  {
    id: text().primaryKey(),
    assignmentId: text()
      .notNull()
      .references(() => assignments.id),
    userId: text()
      .notNull()
      .references(() => users.id),
    text: text().notNull(),
    sentBy: text().notNull(),
    sentAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Null until it was read. */
    readAt: integer({ mode: 'timestamp_ms' }),
  },
  (table) => [index('nudges_to').on(table.assignmentId, table.userId)],
);
