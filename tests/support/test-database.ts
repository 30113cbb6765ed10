import { fileURLToPath } from 'node:url';
import { type Db, migrateDatabase, openDatabase } from '@/db/client';

const migrations = fileURLToPath(new URL('../../db/migrations', import.meta.url));

/** A fresh database in memory, made by the real migrations. */
export function testDatabase(): Db {
  const db = openDatabase(':memory:');
  migrateDatabase(db, migrations);
  return db;
}
