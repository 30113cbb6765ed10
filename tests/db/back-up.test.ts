import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { backUpDatabase, isMigrated, migrateDatabase, openDatabase } from '@/db/client';
import { recordAct } from '@/db/queries/acts';
import { recordAttempt } from '@/db/queries/attempts';
import { anAct, anAttempt } from '../support/attempt-rows';

let folder = '';
let writer: ChildProcess | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'faultwright-back-up-'));
});
afterEach(async () => {
  if (writer?.kill('SIGKILL')) await once(writer, 'exit');
  writer = undefined;
  rmSync(folder, { recursive: true });
});

test('what is copied while another process writes is whole, and all of it stands in the source', async () => {
  const db = freshDatabase('source.db');
  writer = spawn(process.execPath, ['--import', 'tsx', 'tests/support/keep-writing.ts', join(folder, 'source.db')]);
  const counts: number[] = [];
  for (let copy = 1; copy <= 4; copy++) {
    await until(() => countActs('source.db') > (counts.at(-1) ?? 0) + 30);
    await backUpDatabase(db, join(folder, `copy-${copy}.db`));
    counts.push(countActs(`copy-${copy}.db`));
  }
  expect(writer.exitCode).toBeNull();
  const source = rowsOf('source.db');
  for (let copy = 1; copy <= 4; copy++) {
    const file = `copy-${copy}.db`;
    expectConsistent(file);
    for (const [table, rows] of rowsOf(file)) {
      const known = new Set(source.get(table));
      expect(rows.filter((row) => !known.has(row))).toEqual([]);
    }
  }
  expect(counts).toEqual([...counts].sort((a, b) => a - b));
  expect(new Set(counts).size).toBe(4);
});

test('a restored back-up takes further acts', async () => {
  const db = freshDatabase('source.db');
  await recordAttempt(db, anAttempt());
  await recordAct(db, 'ada', anAct());
  await backUpDatabase(db, join(folder, 'restored.db'));
  await recordAct(db, 'ada', anAct({ seq: 2, key: 'lost' }));
  const restored = openDatabase(join(folder, 'restored.db'));
  expect(isMigrated(restored)).toBe(true);
  expect(await recordAct(restored, 'ada', anAct({ seq: 2, key: 'anew' }))).toMatchObject({ seq: 2, key: 'anew' });
});

test('a back-up takes the place of an older one, for its owner only, and leaves nothing beside it', async () => {
  const db = freshDatabase('source.db');
  const inside = join(folder, 'copy.db');
  writeFileSync(inside, 'an older one');
  await backUpDatabase(db, inside);
  expectConsistent('copy.db');
  expect(statSync(inside).mode & 0o777).toBe(0o600);
  expect(readdirSync(folder).filter((name) => name.startsWith('copy'))).toEqual(['copy.db']);
});

test('a back-up that cannot be made leaves the older one as it was', async () => {
  const inside = join(folder, 'copy.db');
  writeFileSync(inside, 'an older one');
  const closed = freshDatabase('source.db') as ReturnType<typeof openDatabase> & { $client: Database.Database };
  closed.$client.close();
  await expect(backUpDatabase(closed, inside)).rejects.toThrow('not open');
  expect(readFileSync(inside, 'utf8')).toBe('an older one');
  expect(readdirSync(folder).filter((name) => name.startsWith('copy'))).toEqual(['copy.db']);
});

function freshDatabase(name: string) {
  const db = openDatabase(join(folder, name));
  migrateDatabase(db, 'db/migrations');
  return db;
}

function inspect<T>(name: string, look: (connection: Database.Database) => T): T {
  const connection = new Database(join(folder, name));
  try {
    return look(connection);
  } finally {
    connection.close();
  }
}

function countActs(name: string): number {
  return inspect(name, (connection) => connection.prepare('SELECT count(*) FROM acts').pluck().get() as number);
}

/** Every row of every table, as text. */
function rowsOf(name: string): Map<string, string[]> {
  return inspect(name, (connection) => {
    const tables = connection.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").pluck().all() as string[];
    return new Map(
      tables.map((table) => [
        table,
        connection
          .prepare(`SELECT * FROM "${table}"`)
          .all()
          .map((row) => JSON.stringify(row)),
      ]),
    );
  });
}

function expectConsistent(name: string): void {
  inspect(name, (connection) => {
    expect(connection.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(connection.pragma('foreign_key_check')).toEqual([]);
    const gaps = 'SELECT attempt_id FROM acts GROUP BY attempt_id HAVING min(seq) <> 1 OR max(seq) <> count(*)';
    expect(connection.prepare(gaps).all()).toEqual([]);
  });
}

async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 2000 && !holds(); tries++) await wait(10);
  if (!holds()) throw new Error('The other process does not write');
}
