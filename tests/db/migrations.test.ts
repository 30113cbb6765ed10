import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { sql } from 'drizzle-orm';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Db, isMigrated, migrateDatabase, NewerDatabaseError, openDatabase } from '@/db/client';
import { findAttempt } from '@/db/queries/attempts';

const MIGRATIONS = 'db/migrations';

interface JournalEntry {
  idx: number;
  when: number;
  tag: string;
  version: string;
  breakpoints: boolean;
}

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faultwright-migrations-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** A copy of the migrations with other entries in its journal. */
function migrationsWith(change: (entries: JournalEntry[]) => JournalEntry[]): string {
  const copy = join(folder, 'migrations');
  cpSync(MIGRATIONS, copy, { recursive: true });
  const file = join(copy, 'meta/_journal.json');
  const journal = JSON.parse(readFileSync(file, 'utf8'));
  writeFileSync(file, JSON.stringify({ ...journal, entries: change(journal.entries) }));
  return copy;
}

/** Only the first migration, as the first installations had it. */
function firstMigration(): string {
  return migrationsWith((entries) => entries.slice(0, 1));
}

/** All migrations and one more, as a later version will have. */
function oneMore(...statements: string[]): string {
  const tag = '9999_later';
  const later = migrationsWith((entries) => [
    ...entries,
    { idx: entries.length, when: 4_000_000_000_000, tag, version: '6', breakpoints: true },
  ]);
  writeFileSync(join(later, `${tag}.sql`), statements.join('--> statement-breakpoint\n'));
  return later;
}

function migrated(file = ':memory:'): Db {
  const db = openDatabase(file);
  migrateDatabase(db, MIGRATIONS);
  return db;
}

/** Everything that stands in a database: its tables, as they were made, and their rows. */
function contents(db: Db): unknown {
  const tables = db.all<{ name: string; sql: string }>(sql`SELECT name, sql FROM sqlite_master ORDER BY name`);
  return tables.map(({ name, sql: made }) => [
    made,
    /^CREATE TABLE/i.test(made ?? '') ? db.all(sql`SELECT * FROM ${sql.identifier(name)}`) : [],
  ]);
}

function insertAttempt(db: Db): void {
  db.run(sql`INSERT INTO attempts (id, learner_id, key, case_code, generator_version, content_hash, demo, created_at)
    VALUES ('old', 'ada', 'start', 'AAA-AAAA-AA', 1, 'abc', 1, 0)`);
}

function insertAct(db: Db): void {
  db.run(sql`INSERT INTO acts (attempt_id, seq, key, kind, body, created_at) VALUES ('old', 1, 'a', 'hint', '{}', 0)`);
}

test('an attempt from before keeps all it had, is not coached and has no difficulty', async () => {
  const db = openDatabase(':memory:');
  migrateDatabase(db, firstMigration());
  insertAttempt(db);
  migrateDatabase(db, MIGRATIONS);
  expect(await findAttempt(db, 'ada', 'old')).toEqual({
    id: 'old',
    learnerId: 'ada',
    key: 'start',
    caseCode: 'AAA-AAAA-AA',
    generatorVersion: 1,
    contentHash: 'abc',
    demo: true,
    createdAt: new Date(0),
    difficulty: null,
    features: null,
    coached: false,
    organizationId: null,
  });
});

test('migrating again changes nothing', () => {
  const db = migrated();
  insertAttempt(db);
  const before = contents(db);
  migrateDatabase(db, MIGRATIONS);
  expect(contents(db)).toEqual(before);
});

test('a database that drizzle’s own migrator made is taken over as it is', () => {
  const db = openDatabase(':memory:');
  migrate(db, { migrationsFolder: MIGRATIONS });
  const before = contents(db);
  migrateDatabase(db, MIGRATIONS);
  expect(contents(db)).toEqual(before);
  expect(isMigrated(db)).toBe(true);
});

test('only a database with just the tables of this version counts as migrated', () => {
  const db = openDatabase(':memory:');
  expect(isMigrated(db)).toBe(false);
  migrateDatabase(db, firstMigration());
  expect(isMigrated(db)).toBe(false);
  migrateDatabase(db, MIGRATIONS);
  expect(isMigrated(db)).toBe(true);
  migrateDatabase(db, oneMore('SELECT 1;'));
  expect(isMigrated(db)).toBe(false);
});

test('a database of a later version is refused and left as it is', () => {
  const db = migrated();
  insertAttempt(db);
  migrateDatabase(db, oneMore('CREATE TABLE later (id text);'));
  const before = contents(db);
  expect(() => migrateDatabase(db, MIGRATIONS)).toThrow(NewerDatabaseError);
  expect(contents(db)).toEqual(before);
});

test('the command says in one sentence that a database is of a later version', async () => {
  migrateDatabase(openDatabase(join(folder, 'faultwright.db')), oneMore('CREATE TABLE later (id text);'));
  expect(await migrateBesides()).toEqual({
    code: 1,
    stdout: '',
    stderr:
      'The database was changed by a newer version of Faultwright. ' +
      'Install that version or a later one, or restore a back-up from before.\n',
  });
});

test('a migration that fails in the middle changes nothing', () => {
  const db = openDatabase(':memory:');
  migrateDatabase(db, firstMigration());
  insertAttempt(db);
  const before = contents(db);
  const failing = oneMore('CREATE TABLE later (id text);', 'INSERT INTO nowhere VALUES (1);');
  expect(() => migrateDatabase(db, failing)).toThrow('no such table: nowhere');
  expect(contents(db)).toEqual(before);
  expect(db.get(sql`PRAGMA foreign_keys`)).toEqual({ foreign_keys: 1 });
});

test('a table that is made anew keeps the rows of those that refer to it', () => {
  const db = migrated();
  insertAttempt(db);
  insertAct(db);
  migrateDatabase(
    db,
    oneMore(
      'CREATE TABLE anew AS SELECT * FROM attempts;',
      'DROP TABLE attempts;',
      'CREATE TABLE attempts (id text PRIMARY KEY, learner_id text, later text);',
      'INSERT INTO attempts (id, learner_id) SELECT id, learner_id FROM anew;',
      'DROP TABLE anew;',
    ),
  );
  expect(db.all(sql`SELECT id, later FROM attempts`)).toEqual([{ id: 'old', later: null }]);
  expect(db.all(sql`SELECT attempt_id FROM acts`)).toEqual([{ attempt_id: 'old' }]);
});

test('a migration that would leave rows that refer to nothing changes nothing', () => {
  const db = migrated();
  insertAttempt(db);
  insertAct(db);
  const before = contents(db);
  expect(() => migrateDatabase(db, oneMore('DELETE FROM attempts;'))).toThrow('rows that refer to nothing: 1');
  expect(contents(db)).toEqual(before);
});

test('processes that migrate at once end up with the same tables, each migration applied once', async () => {
  const answers = await Promise.all([migrateBesides(), migrateBesides(), migrateBesides()]);
  expect(answers.map(({ code, stderr }) => [code, stderr])).toEqual(Array(3).fill([0, '']));
  expect(contents(openDatabase(join(folder, 'faultwright.db')))).toEqual(contents(migrated()));
});

/** Migrates this test's own database by the command, in a process of its own. */
async function migrateBesides(): Promise<{ code: number; stdout: string; stderr: string }> {
  const command = spawn(process.execPath, ['--import', 'tsx', 'app/_cli/migrate.ts'], {
    env: { ...process.env, FAULTWRIGHT_DATA: folder },
  });
  const [stdout, stderr, [code]] = await Promise.all([
    text(command.stdout),
    text(command.stderr),
    once(command, 'exit'),
  ]);
  return { code, stdout, stderr };
}
