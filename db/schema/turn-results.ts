import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { TaskResult } from '../../lib/gradebook/task-result';
import { turns } from './turns';

/**
 * What a turn that was handed in came to. Derived: a row is made when somebody asks for it, and removed when a mark, an
 * override or a change for all makes it anew.
 */
export const turnResults = sqliteTable('turn_results', {
  turnId: text()
    .primaryKey()
    .references(() => turns.id),
  /** 0…100 of what is marked. */
  total: real().notNull(),
  /** Tasks that wait for a person. */
  waiting: integer().notNull(),
  tasks: text({ mode: 'json' }).$type<readonly TaskResult[]>().notNull(),
});
