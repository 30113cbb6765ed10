import { createReadStream } from 'node:fs';
import { lstat, mkdir, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { backUpDatabase } from '@/db/client';
import { database } from '../database';
import { env } from '../env';
import { randomId } from '../random-id';

/** The only names that a back-up has: when it was made, by universal time, and something random. */
const NAME = /^\d{8}T\d{6}Z-[0-9a-f]{20}\.db$/;

export interface BackUp {
  file: string;
  madeAt: Date;
  bytes: number;
}

function folder(): string {
  return join(/* turbopackIgnore: true */ env.FAULTWRIGHT_DATA, 'back-ups');
}

/** Makes a back-up while everybody works on. @returns its name. */
export async function makeBackUp(now: Date): Promise<string> {
  await mkdir(folder(), { recursive: true, mode: 0o700 });
  const file = `${now.toISOString().replace(/[-:]|\.\d+/g, '')}-${randomId()}.db`;
  await backUpDatabase(database(), join(/* turbopackIgnore: true */ folder(), file));
  return file;
}

/** The back-ups there are, newest first. */
export async function listBackUps(): Promise<BackUp[]> {
  const names = await readdir(folder()).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw error;
  });
  const found = await Promise.all(names.filter((name) => NAME.test(name)).map(backUpNamed));
  return found.filter((one) => one !== undefined).sort((a, b) => b.file.localeCompare(a.file));
}

async function backUpNamed(file: string): Promise<BackUp | undefined> {
  const stats = await lstat(join(/* turbopackIgnore: true */ folder(), file));
  return stats.isFile() ? { file, madeAt: stats.mtime, bytes: stats.size } : undefined;
}

/** A back-up by its name, read as it is sent; undefined for a name that no back-up has. */
export async function openBackUp(file: string): Promise<{ body: ReadableStream; bytes: number } | undefined> {
  const listed = (await listBackUps()).find((one) => one.file === file);
  if (!listed) return undefined;
  const stream = createReadStream(join(/* turbopackIgnore: true */ folder(), listed.file));
  return { body: Readable.toWeb(stream) as ReadableStream, bytes: listed.bytes };
}
