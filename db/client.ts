import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import * as schema from './schema';

export type Db = BetterSQLite3Database<typeof schema>;

/**
 * Opens the database file, or a fresh one in memory for `:memory:`.
 * An act counts once it is on the disk: `synchronous=FULL` makes a write wait for that.
 */
export function openDatabase(file: string): Db {
  if (file !== ':memory:') mkdirSync(dirname(file), { recursive: true });
  const connection = new Database(file);
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = FULL');
  connection.pragma('foreign_keys = ON');
  connection.pragma('busy_timeout = 5000');
  return drizzle(connection, { schema, casing: 'snake_case' });
}

/** Brings the tables up to date. Safe to run again. */
export function migrateDatabase(db: Db, folder: string): void {
  migrate(db, { migrationsFolder: folder });
}
