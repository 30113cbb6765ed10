import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';
import { type MigrationMeta, readMigrationFiles } from 'drizzle-orm/migrator';
import journal from './migrations/meta/_journal.json' with { type: 'json' };
import * as schema from './schema';

export type Db = BetterSQLite3Database<typeof schema>;

/** More than any file has: all of it in one step, in which nobody else's write comes between. */
const ALL_PAGES = 0x7fffffff;

/**
 * Opens the database file, or a fresh one in memory for `:memory:`.
 * An act counts once it is on the disk: `synchronous=FULL` makes a write wait for that.
 */
export function openDatabase(file: string): Db {
  if (file !== ':memory:') mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const connection = new Database(file);
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = FULL');
  connection.pragma('foreign_keys = ON');
  connection.pragma('busy_timeout = 5000');
  return drizzle(connection, { schema, casing: 'snake_case' });
}

/** A database that a later version has changed already. What this one would do to it cannot be known. */
export class NewerDatabaseError extends Error {
  override name = 'NewerDatabaseError';
}

/**
 * Brings the tables up to date, all or nothing. Safe to run again, and by two processes at once.
 *
 * @throws NewerDatabaseError where a later version has been here; nothing is changed then.
 */
export function migrateDatabase(db: Db, folder: string): void {
  const connection = connectionOf(db);
  const migrations = readMigrationFiles({ migrationsFolder: folder });
  // A table that changes is made anew and the old one dropped, which must take nothing along that refers to it.
  connection.pragma('foreign_keys = OFF');
  try {
    connection.transaction(() => applyMissing(connection, migrations)).immediate();
  } finally {
    connection.pragma('foreign_keys = ON');
  }
}

/** Whether the database has just the tables that this version was built for. */
export function isMigrated(db: Db): boolean {
  return lastApplied(connectionOf(db)) === Math.max(...journal.entries.map(({ when }) => when));
}

/**
 * Copies the database as it is at one moment, while others go on writing.
 *
 * @param file  Appears whole or not at all, readable by its owner only; replaced if there is one.
 */
export async function backUpDatabase(db: Db, file: string): Promise<void> {
  const draft = `${file}.${randomBytes(8).toString('hex')}`;
  try {
    await (await open(/* turbopackIgnore: true */ draft, 'wx', 0o600)).close();
    await connectionOf(db).backup(draft, { progress: () => ALL_PAGES });
    await reachDisk(draft);
    await rename(draft, file);
    await reachDisk(dirname(file));
  } finally {
    await rm(draft, { force: true });
  }
}

function applyMissing(connection: Database.Database, migrations: readonly MigrationMeta[]): void {
  const last = lastApplied(connection);
  if (last > Math.max(...migrations.map(({ folderMillis }) => folderMillis)))
    throw new NewerDatabaseError(
      'The database was changed by a newer version of Faultwright. Install that version or a later one, or restore a back-up from before.',
    );
  // The table and its columns are those of drizzle's own migrator, which made the first installations.
  connection.exec(
    'CREATE TABLE IF NOT EXISTS __drizzle_migrations (id SERIAL PRIMARY KEY, hash text NOT NULL, created_at numeric)',
  );
  const applied = connection.prepare('INSERT INTO __drizzle_migrations (hash, created_at) VALUES (?, ?)');
  for (const { sql, hash, folderMillis } of migrations.filter((migration) => migration.folderMillis > last)) {
    for (const statement of sql) connection.exec(statement);
    applied.run(hash, folderMillis);
  }
  const dangling = connection.pragma('foreign_key_check') as unknown[];
  if (dangling.length > 0) throw new Error(`Migrating would leave rows that refer to nothing: ${dangling.length}`);
}

/** When the newest migration in the database was written; 0 where there is none. */
function lastApplied(connection: Database.Database): number {
  const exists = connection.prepare("SELECT 1 FROM sqlite_master WHERE name = '__drizzle_migrations'").get();
  return exists ? Number(connection.prepare('SELECT max(created_at) FROM __drizzle_migrations').pluck().get()) : 0;
}

function connectionOf(db: Db): Database.Database {
  return (db as Db & { $client: Database.Database }).$client;
}

async function reachDisk(path: string): Promise<void> {
  const handle = await open(/* turbopackIgnore: true */ path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
