import { migrateDatabase } from '@/db/client';
import { database, databaseFile } from '../_server/database';

migrateDatabase(database(), 'db/migrations');
console.log(`Tables are up to date in ${databaseFile()}`);
