import { Temporal } from 'temporal-polyfill';

/**
 * A moment as documents write it: UTC, to the second.
 *
 * @param at  Milliseconds since 1970, UTC. Fractions of a second are cut off.
 */
export function written(at: number): string {
  return Temporal.Instant.fromEpochMilliseconds(at).toString({ smallestUnit: 'second', roundingMode: 'floor' });
}

/** Milliseconds since 1970 of a written moment; undefined where it is none. */
export function momentWritten(text: string): number | undefined {
  try {
    return Temporal.Instant.from(text).epochMilliseconds;
  } catch (thrown) {
    if (thrown instanceof RangeError) return undefined;
    throw thrown;
  }
}

/** Whole seconds since 1970, as a token's claims count them. */
export function inSeconds(at: number): number {
  return Math.floor(at / 1000);
}
