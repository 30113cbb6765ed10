import { constants } from 'node:fs';
import { type FileHandle, mkdir, open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { backUpDatabase, type Db } from '@/db/client';
import { env } from '../env';
import { randomId } from '../random-id';

/** The only names that a back-up has: when it was made, by universal time, and something random. */
const NAME = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z-[0-9a-f]{20}\.db$/;

export interface BackUp {
  file: string;
  madeAt: Date;
  bytes: number;
}

/** Where back-ups are kept. */
export function backUpFolder(): string {
  return join(/* turbopackIgnore: true */ env.FAULTWRIGHT_DATA, 'back-ups');
}

/** Makes a back-up while everybody works on. @returns its name. */
export async function makeBackUp(db: Db, now: Date, folder = backUpFolder()): Promise<string> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const file = `${now.toISOString().replace(/[-:]|\.\d+/g, '')}-${randomId()}.db`;
  await backUpDatabase(db, join(/* turbopackIgnore: true */ folder, file));
  return file;
}

/** The back-ups there are, newest first. */
export async function listBackUps(folder = backUpFolder()): Promise<BackUp[]> {
  const found = await Promise.all((await namesIn(folder)).map((file) => backUpNamed(folder, file)));
  return found.filter((one) => one !== undefined).sort((a, b) => b.file.localeCompare(a.file));
}

/** A back-up by its name, read as it is sent; undefined for a name that no back-up has. */
export async function openBackUp(file: string, folder = backUpFolder()): Promise<ReadableStream | undefined> {
  if (!(await namesIn(folder)).includes(file)) return undefined;
  const opened = await openPlain(folder, file);
  return opened && (Readable.toWeb(opened.handle.createReadStream()) as ReadableStream);
}

async function backUpNamed(folder: string, file: string): Promise<BackUp | undefined> {
  const opened = await openPlain(folder, file);
  await opened?.handle.close();
  return opened && { file, madeAt: momentIn(file), bytes: opened.bytes };
}

/** Names that back-ups have, of what is in the folder; whatever a name says is not believed. */
async function namesIn(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch(unlessMissing);
  return (names ?? []).filter((name) => !Number.isNaN(momentIn(name).getTime()));
}

function momentIn(name: string): Date {
  const [, year, month, day, hour, minute, second] = NAME.exec(name) ?? [];
  return new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
}

/** Opens a file of the folder itself, never what a link in it leads to; undefined where there is none. */
async function openPlain(folder: string, file: string): Promise<{ handle: FileHandle; bytes: number } | undefined> {
  const flags = constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK;
  const handle = await open(join(/* turbopackIgnore: true */ folder, file), flags).catch(unlessMissing);
  if (!handle) return undefined;
  const stats = await handle.stat();
  if (stats.isFile()) return { handle, bytes: stats.size };
  await handle.close();
  return undefined;
}

/** Gone since it was listed, or a link where no link is followed. */
function unlessMissing(error: NodeJS.ErrnoException): undefined {
  if (error.code !== 'ENOENT' && error.code !== 'ELOOP') throw error;
}
