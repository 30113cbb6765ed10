import { index, integer, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { writtenForms } from '../../lib/questions/written/written-forms';
import type { WrittenQuestion } from '../../lib/questions/written/written-question';
import { organizations } from './organizations';

export const versionStates = ['draft', 'in-review', 'live', 'retired'] as const;
export type VersionState = (typeof versionStates)[number];

/** A question that an instructor wrote. What it says is in its versions. */
export const writtenQuestions = sqliteTable(
  'written_questions',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    createdBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('written_questions_of_organization').on(table.organizationId, table.createdAt)],
);

/** Only a draft is ever changed; one version of a question at most is live. */
export const writtenVersions = sqliteTable(
  'written_versions',
  {
    id: text().primaryKey(),
    questionId: text()
      .notNull()
      .references(() => writtenQuestions.id),
    /** From 1. */
    number: integer().notNull(),
    state: text({ enum: versionStates }).notNull(),
    body: text({ mode: 'json' }).$type<WrittenQuestion>().notNull(),
    /** What is looked for by, as the body has it. */
    title: text().notNull(),
    form: text({ enum: writtenForms }).notNull(),
    /** Ids in commas, one before the first and one behind the last. */
    topics: text().notNull(),
    writtenBy: text().notNull(),
    changedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Somebody other than `writtenBy`. */
    reviewedBy: text(),
    reviewedAt: integer({ mode: 'timestamp_ms' }),
    /** What the reviewer sent it back with. */
    reviewNote: text(),
  },
  (table) => [
    unique('written_versions_once').on(table.questionId, table.number),
    index('written_versions_by_state').on(table.state),
  ],
);

/** Pictures that were uploaded and made anew; the bytes lie in the data folder. */
export const pictures = sqliteTable('pictures', {
  id: text().primaryKey(),
  organizationId: text()
    .notNull()
    .references(() => organizations.id),
  uploadedBy: text().notNull(),
  width: integer().notNull(),
  height: integer().notNull(),
  bytes: integer().notNull(),
  uploadedAt: integer({ mode: 'timestamp_ms' }).notNull(),
});
