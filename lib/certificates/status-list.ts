import { gunzipSync, gzipSync } from 'fflate';
import { base64url } from 'jose';
import { bytesIn } from './base64url';

/** A list may not be shorter, or its places would tell who they belong to. @source W3C Bitstring Status List 1.0, section 3.2. */
export const LEAST_PLACES = 131_072;

/** Longest list that is unpacked: 16 MiB, which is 134 million places. */
const MOST_BYTES = 16 * 1024 * 1024;

/** What a list can say of a place. */
export const purposes = ['suspension', 'revocation'] as const;
export type StatusPurpose = (typeof purposes)[number];

/**
 * A list of statuses as it is published: bits from the left, gzip, base64url behind the `u` of multibase.
 *
 * @param set  Places whose status is set.
 * @param places  A multiple of 8, no less than 131,072.
 * @throws RangeError for a place that the list does not have.
 * @source W3C Bitstring Status List 1.0, sections 2.2 and 3.3.
 */
export function encodedList(set: Iterable<number>, places: number = LEAST_PLACES): string {
  const bytes = new Uint8Array(places / 8);
  for (const place of set) {
    if (!Number.isInteger(place) || place < 0 || place >= places)
      throw new RangeError(`No place ${place} of ${places}`);
    bytes[place >> 3] = (bytes[place >> 3] ?? 0) | (0x80 >> (place & 7));
  }
  // Without its own moment, which would make each copy of the same list another one.
  return `u${base64url.encode(gzipSync(bytes, { mtime: 0 }))}`;
}

/** The bits of a published list; undefined where it is none, or too short. */
export function decodedList(encoded: string): Uint8Array | undefined {
  const packed = encoded.startsWith('u') ? bytesIn(encoded.slice(1)) : undefined;
  if (!packed || unpackedLength(packed) > MOST_BYTES) return undefined;
  const bytes = unpacked(packed);
  return bytes && bytes.length * 8 >= LEAST_PLACES ? bytes : undefined;
}

/** Whether the status at a place is set; undefined for a place that the list does not have. */
export function statusAt(bits: Uint8Array, place: number): boolean | undefined {
  const byte = bits[place >> 3];
  return byte === undefined || place < 0 ? undefined : (byte & (0x80 >> (place & 7))) !== 0;
}

/**
 * A free place, each as likely as any other, so that it tells nothing of when it was taken.
 *
 * @param randomBelow  A whole number from 0 up to, and not including, its argument.
 * @returns undefined where no place is free.
 */
export function freePlace(
  taken: ReadonlySet<number>,
  randomBelow: (limit: number) => number,
  places: number = LEAST_PLACES,
): number | undefined {
  const free = Array.from({ length: places }, (_, place) => place).filter((place) => !taken.has(place));
  return free.length === 0 ? undefined : free[randomBelow(free.length)];
}

/** As the last four bytes say. @source RFC 1952, section 2.3.1. */
function unpackedLength(packed: Uint8Array): number {
  if (packed.length < 18) return Number.POSITIVE_INFINITY;
  return new DataView(packed.buffer, packed.byteOffset + packed.length - 4, 4).getUint32(0, true);
}

/** Into room for what it says it holds, and no more, whatever comes. */
function unpacked(packed: Uint8Array): Uint8Array | undefined {
  try {
    const length = unpackedLength(packed);
    const bytes = gunzipSync(packed, { out: new Uint8Array(length) });
    return bytes.length === length ? bytes : undefined;
  } catch {
    return undefined;
  }
}
