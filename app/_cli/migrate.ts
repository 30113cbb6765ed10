import { explainFailure } from './explain-failure';

/** Loaded late, so that wrong settings are answered in plain lines. */
async function migrate(): Promise<void> {
  const { migrateDatabase } = await import('@/db/client');
  const { database, databaseFile } = await import('../_server/database');
  migrateDatabase(database(), 'db/migrations');
  console.log(`Tables are up to date in ${databaseFile()}`);
}

migrate().catch(explainFailure);
