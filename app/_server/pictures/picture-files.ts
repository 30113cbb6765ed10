import { constants } from 'node:fs';
import { mkdir, open } from 'node:fs/promises';
import { join } from 'node:path';
import { env } from '../env';

/** Where pictures are kept: in the data folder, which nothing is served from but by the doors. */
export function pictureFolder(): string {
  return join(/* turbopackIgnore: true */ env.FAULTWRIGHT_DATA, 'pictures');
}

/** Keeps a picture under an id that none has yet. It is on the disk before anything refers to it. */
export async function keepPicture(id: string, webp: Uint8Array, folder = pictureFolder()): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const handle = await open(pathIn(folder, id), 'wx', 0o600);
  try {
    await handle.writeFile(webp);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A picture's bytes; undefined where the file is gone. */
export async function readKeptPicture(id: string, folder = pictureFolder()): Promise<Buffer | undefined> {
  const handle = await open(pathIn(folder, id), constants.O_RDONLY | constants.O_NOFOLLOW).catch(unlessMissing);
  try {
    return await handle?.readFile();
  } finally {
    await handle?.close();
  }
}

/** @throws RangeError for an id that could lead elsewhere. */
function pathIn(folder: string, id: string): string {
  if (!/^[0-9a-f]{20}$/.test(id)) throw new RangeError('Not the id of a picture');
  return join(/* turbopackIgnore: true */ folder, id);
}

function unlessMissing(error: NodeJS.ErrnoException): undefined {
  if (error.code !== 'ENOENT' && error.code !== 'ELOOP') throw error;
}
