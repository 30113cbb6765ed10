import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import { migrateDatabase, openDatabase } from '@/db/client';
import { findAttempt } from '@/db/queries/attempts';

const MIGRATIONS = 'db/migrations';

/** A folder that holds only the first migration, as the first installations had it. */
function firstMigration(): string {
  const folder = mkdtempSync(join(tmpdir(), 'faultwright-migrations-'));
  const journal = JSON.parse(readFileSync(join(MIGRATIONS, 'meta/_journal.json'), 'utf8'));
  const [first] = journal.entries;
  mkdirSync(join(folder, 'meta'));
  cpSync(join(MIGRATIONS, `${first.tag}.sql`), join(folder, `${first.tag}.sql`));
  writeFileSync(join(folder, 'meta/_journal.json'), JSON.stringify({ ...journal, entries: [first] }));
  return folder;
}

test('an attempt from before keeps all it had, is not coached and has no difficulty', async () => {
  const folder = firstMigration();
  const db = openDatabase(':memory:');
  migrateDatabase(db, folder);
  db.run(sql`INSERT INTO attempts (id, learner_id, key, case_code, generator_version, content_hash, demo, created_at)
    VALUES ('old', 'ada', 'start', 'AAA-AAAA-AA', 1, 'abc', 1, 0)`);
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
  rmSync(folder, { recursive: true });
});
