import { blob, index, integer, primaryKey, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import {
  type EvidenceDetail,
  type EvidenceVersions,
  evidencePurposes,
  evidenceSources,
} from '../../lib/competency/evidence';
import type { TaskModel } from '../../lib/competency/task-model';
import { organizations } from './organizations';

/** Graded responses, one row a topic. Rows are added and never changed; of one work on one topic the last revision counts. */
export const evidence = sqliteTable(
  'evidence',
  {
    id: text().primaryKey(),
    learnerId: text().notNull(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    topic: text().notNull(),
    source: text({ enum: evidenceSources }).notNull(),
    /** As in `lib/competency/evidence.ts`. */
    work: text().notNull(),
    /** From 1. */
    revision: integer().notNull(),
    counts: integer({ mode: 'boolean' }).notNull(),
    score: integer().notNull(),
    model: text({ mode: 'json' }).$type<TaskModel>().notNull(),
    hints: integer().notNull(),
    exposure: text().notNull(),
    safetyEvents: integer().notNull(),
    purpose: text({ enum: evidencePurposes }).notNull(),
    /** When the response was given. */
    at: integer({ mode: 'timestamp_ms' }).notNull(),
    versions: text({ mode: 'json' }).$type<EvidenceVersions>().notNull(),
    detail: text({ mode: 'json' }).$type<EvidenceDetail>().notNull(),
    writtenAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    unique('evidence_once').on(table.work, table.topic, table.revision),
    index('evidence_of_learner').on(table.learnerId, table.organizationId, table.topic, table.at),
    index('evidence_of_organization').on(table.organizationId, table.at),
  ],
);

/** Work whose evidence is still to be written, or to be written anew. Put down with the mark itself, taken away with the evidence. */
export const evidenceDue = sqliteTable(
  'evidence_due',
  {
    work: text().primaryKey(),
    learnerId: text().notNull(),
    organizationId: text().notNull(),
    since: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('evidence_due_of_organization').on(table.organizationId, table.learnerId)],
);

/** What somebody's evidence on a topic comes to. Derived: made again from the evidence whenever it is missing or out of date. */
export const topicStates = sqliteTable(
  'topic_states',
  {
    learnerId: text().notNull(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    topic: text().notNull(),
    /** Time of the newest response, to which the others are aged. */
    at: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Weighted log-likelihood on the grid, as bytes. */
    sum: blob({ mode: 'buffer' }).notNull(),
    /** Responses that count, how much they count together, and cases among them. */
    count: integer().notNull(),
    weight: real().notNull(),
    cases: integer().notNull(),
    /** What it was aged with, and the version of the rules it was made by. */
    halfLifeDays: real().notNull(),
    rules: integer().notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organizationId, table.learnerId, table.topic] }),
    index('topic_states_of_learner').on(table.learnerId),
  ],
);

/** Somebody's newest cases with the safety-critical acts in each. Derived, like `topic_states`. */
export const safetyStates = sqliteTable(
  'safety_states',
  {
    learnerId: text().notNull(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    /** Newest first. */
    recent: text({ mode: 'json' }).$type<readonly { work: string; at: number; events: number }[]>().notNull(),
  },
  (table) => [primaryKey({ columns: [table.organizationId, table.learnerId] })],
);
