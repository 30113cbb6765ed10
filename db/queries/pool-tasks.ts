import { and, count, eq, inArray, or, sql } from 'drizzle-orm';
import type { PoolUse } from '../../lib/competency/pool';
import type { Db } from '../client';
import { poolTasks } from '../schema';
import type { Statement } from '../together';

export type PoolTask = typeof poolTasks.$inferSelect;
export type NewPoolTask = typeof poolTasks.$inferInsert;

/** What tasks have to have been worked out under. */
export interface PoolVersions {
  case: { contentHash: string; generatorVersion: number };
  question: { contentHash: string; generatorVersion: number };
}

export function addingPoolTask(db: Db, task: NewPoolTask): Statement {
  return db.insert(poolTasks).values(task);
}

/** Tasks that may be drawn for a use: those worked out under the present versions, in the order of their ids. */
export async function listPool(db: Db, use: PoolUse, versions: PoolVersions): Promise<PoolTask[]> {
  return db.select().from(poolTasks).where(drawable(use, versions)).orderBy(poolTasks.id);
}

export async function findPoolTasks(db: Db, ids: readonly string[]): Promise<PoolTask[]> {
  return db
    .select()
    .from(poolTasks)
    .where(inArray(poolTasks.id, [...ids]));
}

/** How many tasks of each kind may be drawn for a use. */
export async function countPool(
  db: Db,
  use: PoolUse,
  versions: PoolVersions,
): Promise<Record<PoolTask['kind'], number>> {
  const rows = await db
    .select({ kind: poolTasks.kind, tasks: count() })
    .from(poolTasks)
    .where(drawable(use, versions))
    .groupBy(poolTasks.kind);
  const of = (kind: PoolTask['kind']) => rows.find((row) => row.kind === kind)?.tasks ?? 0;
  return { case: of('case'), question: of('question') };
}

/** Counts that a task was given once more. */
export function countingExposure(db: Db, poolTaskId: string): Statement {
  return db
    .update(poolTasks)
    .set({ exposures: sql`${poolTasks.exposures} + 1` })
    .where(eq(poolTasks.id, poolTaskId));
}

function drawable(use: PoolUse, versions: PoolVersions) {
  const under = (kind: PoolTask['kind']) =>
    and(
      eq(poolTasks.kind, kind),
      eq(poolTasks.contentHash, versions[kind].contentHash),
      eq(poolTasks.generatorVersion, versions[kind].generatorVersion),
    );
  return and(eq(poolTasks.use, use), or(under('case'), under('question')));
}
