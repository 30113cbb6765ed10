import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  closeSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { env, SECRET_LENGTH, SettingsError } from './env';
import { log } from './log';

let known: string | undefined;

/** The installation's own secret, which signs sessions and draws the seeds of assessed work. */
export function secret(): string {
  known ??= env.FAULTWRIGHT_SECRET ?? storedSecret(env.FAULTWRIGHT_DATA);
  return known;
}

/**
 * The secret kept in a folder, made there when there is none.
 *
 * @throws SettingsError when the file is too short to be one.
 */
export function storedSecret(folder: string): string {
  const file = join(/* turbopackIgnore: true */ folder, 'secret');
  const stored = readSecret(file) ?? makeSecret(folder, file);
  if (stored.length >= SECRET_LENGTH) return stored;
  throw new SettingsError(`${file} holds no secret of ${SECRET_LENGTH} characters or more. Remove it to have one made`);
}

function readSecret(file: string): string | undefined {
  try {
    keepToOwner(file);
    return readFileSync(file, 'utf8').trim();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

/** Whoever else could read it may have done so; the warning lets somebody decide whether to make a new one. */
function keepToOwner(file: string): void {
  if ((statSync(file).mode & 0o077) === 0) return;
  chmodSync(file, 0o600);
  log.warn({ file }, 'The secret could be read by others on this machine; now only by its owner');
}

/** Written whole under another name, then linked: of processes that start at once, one wins and all read its secret. */
function makeSecret(folder: string, file: string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const draft = `${file}.${randomBytes(8).toString('hex')}`;
  writeDurably(draft, randomBytes(32).toString('base64url'));
  try {
    linkSync(draft, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(draft);
  }
  return readFileSync(file, 'utf8').trim();
}

function writeDurably(file: string, text: string): void {
  const descriptor = openSync(file, 'wx', 0o600);
  try {
    writeSync(descriptor, text);
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
