import { type ChildProcess, spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sql } from 'drizzle-orm';
import { type Db, migrateDatabase, openDatabase } from '@/db/client';
import { makePeople, TEST_SECRET } from './people';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const next = createRequire(import.meta.url).resolve('next/dist/bin/next');

/** The server that most browser tests share. */
export const SHARED_PORT = 3131;

export interface Place {
  port: number;
  /** Folder of its database. */
  data: string;
}

export function placeFor(port: number): Place {
  return { port, data: join(tmpdir(), `faultwright-e2e-${port}`) };
}

/** A database with all tables and the test people, and nothing done yet, where a server of this place will look for it. */
export async function freshData({ data }: Place): Promise<void> {
  rmSync(data, { recursive: true, force: true });
  const db = openPlace({ port: 0, data });
  migrateDatabase(db, join(root, 'db/migrations'));
  await makePeople(db);
}

/** What a test writes itself need not outlive the machine; a server's own writes wait for the disk as ever. */
export function openPlace({ data }: Place): Db {
  const db = openDatabase(join(data, 'faultwright.db'));
  db.run(sql`pragma synchronous = off`);
  return db;
}

/**
 * The built site on a place's port, and nowhere but on this machine.
 *
 * @param settings  What this server is told besides its place.
 */
export function startServer({ port, data }: Place, settings: Readonly<Record<string, string>> = {}): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', 'app/_cli/serve.ts'], {
    cwd: root,
    stdio: 'ignore',
    env: {
      ...process.env,
      FAULTWRIGHT_DATA: data,
      FAULTWRIGHT_HOST: '127.0.0.1',
      FAULTWRIGHT_PORT: String(port),
      FAULTWRIGHT_SECRET: TEST_SECRET,
      ...settings,
    },
  });
}

/** Resolves once the server answers. @throws when it does not within half a minute. */
export async function untilUp({ port }: Place): Promise<void> {
  for (let tries = 0; tries < 150; tries++) {
    const answer = await fetch(`http://127.0.0.1:${port}/icon.svg`).catch(() => undefined);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error(`Nothing answers on port ${port}`);
}
