import { index, integer, real, sqliteTable, text, unique } from 'drizzle-orm/sqlite-core';
import type { Features } from '../../lib/diagnosis/difficulty';
import { organizations } from './organizations';

/** A learner at a case. The case itself is a function of its code, the generator and the content: only those are kept. */
export const attempts = sqliteTable(
  'attempts',
  {
    /** Random, so that one address does not tell the next. */
    id: text().primaryKey(),
    learnerId: text().notNull(),
    /** Where it was made; null for one from before there were accounts, until the first administrator takes it over. */
    organizationId: text().references(() => organizations.id),
    /** Made by the client, so that a second press of the button starts nothing new. */
    key: text().notNull(),
    caseCode: text().notNull(),
    generatorVersion: integer().notNull(),
    contentHash: text().notNull(),
    /** Made by the seed with invented acts, and shown as such. */
    demo: integer({ mode: 'boolean' }).notNull().default(false),
    /** From the case's certificate, in logits, with what it was made from; null where none was asked for. */
    difficulty: real(),
    features: text({ mode: 'json' }).$type<Features>(),
    /** The learner may ask for hints. */
    coached: integer({ mode: 'boolean' }).notNull().default(false),
    createdAt: integer({ mode: 'timestamp_ms' }).notNull(),
  },
  (table) => [
    unique('attempts_once').on(table.learnerId, table.key),
    index('attempts_of_learner').on(table.learnerId, table.organizationId, table.createdAt),
    index('attempts_of_organization').on(table.organizationId, table.createdAt),
  ],
);
