import { index, integer, primaryKey, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import { type PoolTopic, poolUses, type TaskChoice } from '../../lib/competency/pool';
import type { Features } from '../../lib/diagnosis/difficulty';
import type { QuestionSpec } from '../../lib/questions/question';
import type { IntakeOutcome } from '../../lib/readiness/intake-outcome';
import type { RoleProfile } from '../../lib/readiness/profile';
import { attempts } from './attempts';
import { organizations } from './organizations';
import { sittings } from './sittings';

/** Cases and questions worked out beforehand, to choose from. A case's code tells its truth to who has the programme: for the server alone. */
export const poolTasks = sqliteTable(
  'pool_tasks',
  {
    id: text().primaryKey(),
    use: text({ enum: poolUses }).notNull(),
    kind: text({ enum: ['case', 'question'] }).notNull(),
    /** Null for a question. */
    caseCode: text(),
    /** Null for a case. */
    spec: text({ mode: 'json' }).$type<QuestionSpec>(),
    topics: text({ mode: 'json' }).$type<readonly PoolTopic[]>().notNull(),
    /** Logits. */
    difficulty: real().notNull(),
    features: text({ mode: 'json' }).$type<Features | Readonly<Record<string, number>>>().notNull(),
    /** How long somebody who knows takes. */
    seconds: integer().notNull(),
    /** What it was worked out under; under another it is not drawn. */
    contentHash: text().notNull(),
    generatorVersion: integer().notNull(),
    /** How often it was given. */
    exposures: integer().notNull().default(0),
    addedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [index('pool_tasks_to_draw').on(table.use, table.contentHash, table.generatorVersion)],
);

export const intakeEnds = ['decided', 'all-asked', 'time', 'stopped'] as const;

/** New-hire checks: somebody's adaptive sitting for a role. */
export const intakes = sqliteTable(
  'intakes',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    learnerId: text().notNull(),
    profileId: text().notNull(),
    /** As it stood when the check was given. */
    profile: text({ mode: 'json' }).$type<RoleProfile>().notNull(),
    createdBy: text().notNull(),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** SHA-256 of what the link carries, which itself is not kept; null once it was taken back. */
    tokenHash: text().unique(),
    linkEndsAt: integer({ mode: 'timestamp_ms' }).notNull(),
    /** Share of the minutes on top. Told to nobody but who gave it. */
    extraTime: real().notNull().default(0),
    /** Null until it is begun. */
    startedAt: integer({ mode: 'timestamp_ms' }),
    endsAt: integer({ mode: 'timestamp_ms' }),
    /** Null while it is open. */
    finishedAt: integer({ mode: 'timestamp_ms' }),
    end: text({ enum: intakeEnds }),
    /** Its questions; null until it is begun. */
    sittingId: text().references(() => sittings.id),
    /** What it came to, as it stood at its end; null while it is open. */
    outcome: text({ mode: 'json' }).$type<IntakeOutcome>(),
    demo: integer({ mode: 'boolean' }).notNull().default(false),
  },
  (table) => [
    index('intakes_of_organization').on(table.organizationId, table.createdAt),
    index('intakes_of_learner').on(table.learnerId, table.organizationId),
    unique('intakes_of_sitting').on(table.sittingId),
  ],
);

/** What was given at each place of a new-hire check, and why. Rows are added and never changed. */
export const intakeTasks = sqliteTable(
  'intake_tasks',
  {
    intakeId: text()
      .notNull()
      .references(() => intakes.id),
    /** From 1. */
    place: integer().notNull(),
    poolTaskId: text().notNull(),
    /** Null for a question. */
    attemptId: text()
      .references(() => attempts.id)
      .unique(),
    /** Null for a case. */
    sittingPlace: integer(),
    choice: text({ mode: 'json' }).$type<TaskChoice>().notNull(),
    givenAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.intakeId, table.place] }),
    index('intake_tasks_of_pool').on(table.poolTaskId),
  ],
);
