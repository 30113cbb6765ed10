import { Unzip, type UnzipFile, UnzipInflate, UnzipPassThrough } from 'fflate';
import type { Refused } from './terms';

/** What a package may be at most, once it is unpacked. */
export interface ZipLimits {
  files: number;
  /** Bytes of one file. */
  fileBytes: number;
  /** Bytes of all. */
  totalBytes: number;
  /** Times as many bytes as were sent. */
  ratio: number;
}

/** Room for ten thousand questions and their manifest, or for a few hundred with pictures. */
export const usualLimits: ZipLimits = {
  files: 25_000,
  fileBytes: 16 * 2 ** 20,
  totalBytes: 128 * 2 ** 20,
  ratio: 100,
};

/** A small package may be as empty as it likes. */
const FREE_BYTES = 2 ** 20;

export type Files = ReadonlyMap<string, Uint8Array>;

/** So much is unpacked at a time, before it is counted. */
const PIECE = 16 * 1024;

/**
 * Unpacks a zip in memory. Sizes are counted as bytes come out, whatever the file says of itself; files are taken as they
 * lie one after the other, whatever its directory says; and names are taken for names: nothing is written to a path.
 */
export function unzipSafely(bytes: Uint8Array, limits: ZipLimits = usualLimits): Files | Refused {
  if (!isWholeZip(bytes)) return refuse('not-a-zip');
  const taking = new Taking(limits, bytes.length);
  const unzip = new Unzip((file) => taking.take(file));
  unzip.register(UnzipPassThrough);
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length && !taking.refused; at += PIECE)
      unzip.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
  } catch {
    return taking.refused ?? refuse('not-a-zip');
  }
  if (taking.refused) return taking.refused;
  return taking.open > 0 || taking.files.size === 0 ? refuse('not-a-zip') : taking.files;
}

/** Begins like one, and has the record that ends one. @source PKWARE APPNOTE 4.3.7, 4.3.16, from memory */
function isWholeZip(bytes: Uint8Array): boolean {
  const begins = bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5);
  const least = bytes.length - LONGEST_END;
  for (let at = bytes.length - END; begins && at >= Math.max(0, least); at--)
    if (bytes[at] === 0x50 && bytes[at + 1] === 0x4b && bytes[at + 2] === 5 && bytes[at + 3] === 6) return true;
  return false;
}

/** Bytes of that record: without a comment, and with the longest. */
const END = 22;
const LONGEST_END = END + 0xffff;

function refuse(refused: Refused['refused'], what = ''): Refused {
  return { refused, file: '', what };
}

class Taking {
  readonly files = new Map<string, Uint8Array>();
  /** Files begun that have not ended: a zip that breaks off leaves one. */
  open = 0;
  refused: Refused | undefined;
  #total = 0;
  #seen = 0;

  constructor(
    readonly limits: ZipLimits,
    readonly sent: number,
  ) {}

  take(file: UnzipFile): void {
    this.refused ??= this.#faultOf(file.name);
    // A folder of its own holds nothing.
    if (this.refused || file.name.endsWith('/')) return;
    this.files.set(file.name, new Uint8Array());
    this.open++;
    const pieces: Uint8Array[] = [];
    let size = 0;
    file.ondata = (error, piece, final) => {
      if (error) this.refused ??= refuse('not-a-zip', file.name);
      if (this.refused) return;
      size += piece.length;
      this.#total += piece.length;
      this.refused = this.#excessOf(file.name, size);
      if (this.refused) return file.terminate();
      pieces.push(piece);
      if (!final) return;
      this.open--;
      this.files.set(file.name, joined(pieces, size));
    };
    file.start();
  }

  #faultOf(name: string): Refused | undefined {
    if (++this.#seen > this.limits.files) return refuse('too-many-files', String(this.limits.files));
    if (!isPlainPath(name.replace(/\/$/, ''))) return refuse('bad-path', name.slice(0, 200));
    return this.files.has(name) ? refuse('file-twice', name) : undefined;
  }

  #excessOf(name: string, size: number): Refused | undefined {
    const { fileBytes, totalBytes, ratio } = this.limits;
    if (size > fileBytes || this.#total > totalBytes) return refuse('too-large', name);
    return this.#total > FREE_BYTES + ratio * this.sent ? refuse('bomb', name) : undefined;
  }
}

/** A path that leads nowhere but down: no way up, no root, no drive, no sign that some system reads otherwise. */
export function isPlainPath(path: string): boolean {
  if (path.length > 300 || /[\\:]/.test(path) || [...path].some((sign) => sign < ' ')) return false;
  return path.split('/').every((part) => part !== '' && part !== '.' && part !== '..');
}

function joined(pieces: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
