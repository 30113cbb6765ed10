import { index, integer, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { Standing } from '../../lib/readiness/intake-outcome';
import type { RoleProfile } from '../../lib/readiness/profile';
import { organizations } from './organizations';

/** Role profiles that an organisation wrote, or changed from those of the content. Rows are added; the last version counts. */
export const roleProfiles = sqliteTable(
  'role_profiles',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    profileId: text().notNull(),
    version: integer().notNull(),
    /** Null where the organisation does without this profile. */
    body: text({ mode: 'json' }).$type<RoleProfile>(),
    changedBy: text().notNull(),
    changedAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [unique('role_profiles_once').on(table.organizationId, table.profileId, table.version)],
);

/** One thing that was looked for, in the words of the day. */
export interface ObservedItem {
  id: string;
  topic: string;
  text: string;
  outOf: number;
  pass: number;
  score: number;
}

/** Hands-on checks: what somebody was seen doing. Rows are added; one that was wrong is taken back, not changed. */
export const observations = sqliteTable(
  'observations',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    learnerId: text().notNull(),
    /** The profile that asked for it; null for one made without. */
    profileId: text(),
    items: text({ mode: 'json' }).$type<readonly ObservedItem[]>().notNull(),
    /** Something dangerous was seen. */
    unsafe: integer({ mode: 'boolean' }).notNull(),
    comment: text().notNull(),
    observedBy: text().notNull(),
    observedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    writtenAt: integer({ mode: 'timestamp_ms' }).notNull(),
    takenBackBy: text(),
    takenBackAt: integer({ mode: 'timestamp_ms' }),
    takenBackReason: text(),
  },
  (table) => [index('observations_of_learner').on(table.learnerId, table.organizationId, table.observedAt)],
);

/** What somebody with a name decided about a person in a role. Rows are added; one may be taken back, with a reason. */
export const signOffs = sqliteTable(
  'sign_offs',
  {
    id: text().primaryKey(),
    organizationId: text()
      .notNull()
      .references(() => organizations.id),
    learnerId: text().notNull(),
    profileId: text().notNull(),
    profile: text({ mode: 'json' }).$type<RoleProfile>().notNull(),
    /** What the evidence said when it was signed. */
    standing: text({ mode: 'json' }).$type<Standing>().notNull(),
    comment: text().notNull(),
    observationId: text().references(() => observations.id),
    signedBy: text().notNull(),
    signedAt: integer({ mode: 'timestamp_ms' }).notNull(),
    endsAt: integer({ mode: 'timestamp_ms' }).notNull(),
    takenBackBy: text(),
    takenBackAt: integer({ mode: 'timestamp_ms' }),
    takenBackReason: text(),
  },
  (table) => [
    index('sign_offs_of_organization').on(table.organizationId, table.profileId, table.signedAt),
    index('sign_offs_of_learner').on(table.learnerId, table.organizationId),
  ],
);
