import { join } from 'node:path';
import { type Db, openDatabase } from '@/db/client';
import { env } from './env';

let opened: Db | undefined;

/** The database of this installation. Opened when first asked for, so that building the pages touches no file. */
export function database(): Db {
  opened ??= openDatabase(databaseFile());
  return opened;
}

export function databaseFile(): string {
  return join(/* turbopackIgnore: true */ env.FAULTWRIGHT_DATA, 'faultwright.db');
}
