import { index, integer, primaryKey, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { PanelTask } from '../../lib/readiness/panel';
import type { Scheme } from '../../lib/readiness/scheme';
import { organizations } from './organizations';

/** Schemes as an organisation has changed them. Rows are added; the last version counts for whoever applies from then on. */
export const schemeVersions = sqliteTable(
  'scheme_versions',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    schemeId: text().notNull(),
    version: integer().notNull(),
    body: text({ mode: 'json' }).$type<Scheme>().notNull(),
    changedBy: text().notNull(),
    changedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** What changed and why, for those whom it concerns. */
    note: text().notNull(),
  },
  (table) => [unique('scheme_versions_once').on(table.organizationId, table.schemeId, table.version)],
);

export const panelStates = ['first-round', 'second-round', 'closed'] as const;

/** Panels of judges who say where the line of a scheme is. */
export const panels = sqliteTable(
  'panels',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    schemeId: text().notNull(),
    title: text().notNull(),
    /** What is judged, as it stood when the panel began. */
    tasks: text({ mode: 'json' }).$type<readonly PanelTask[]>().notNull(),
    state: text({ enum: panelStates }).notNull(),
    createdBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    closedAt: integer({ mode: 'timestamp_ms' }),
    /** Of the scheme, that took the cut over; null until one did. */
    adoptedVersion: integer(),
    demo: integer({ mode: 'boolean' }).notNull().default(false),
  },
  (table) => [index('panels_of_organization').on(table.organizationId, table.createdAt)],
);

export const panelJudges = sqliteTable(
  'panel_judges',
  {
    panelId: text()
      .notNull()
      .references(() => panels.id),
    judgeId: text().notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.panelId, table.judgeId] }),
    index('panel_judges_by_judge').on(table.judgeId),
  ],
);

/** What a judge expects of somebody just good enough, a task and round. A later rating of the same round replaces the earlier. */
export const panelRatings = sqliteTable(
  'panel_ratings',
  {
    panelId: text()
      .notNull()
      .references(() => panels.id),
    judgeId: text().notNull(),
    round: integer().notNull(),
    /** Place among the panel's tasks, from 1. */
    task: integer().notNull(),
    /** Expected score, 0…m of the task. */
    expected: real().notNull(),
    ratedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.panelId, table.judgeId, table.round, table.task] })],
);

export const applicationStates = ['open', 'granted', 'refused', 'withdrawn'] as const;

/** Somebody asking for a certificate, under the version of the scheme of that day. */
export const applications = sqliteTable(
  'applications',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    learnerId: text().notNull(),
    schemeId: text().notNull(),
    scheme: text({ mode: 'json' }).$type<Scheme>().notNull(),
    state: text({ enum: applicationStates }).notNull(),
    appliedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Somebody who did not teach, mark or observe the applicant. */
    decidedBy: text(),
    decidedAt: integer({ mode: 'timestamp_ms' }),
    reason: text(),
    demo: integer({ mode: 'boolean' }).notNull().default(false),
  },
  (table) => [
    index('applications_of_organization').on(table.organizationId, table.state, table.appliedAt),
    index('applications_of_learner').on(table.learnerId, table.organizationId),
  ],
);
