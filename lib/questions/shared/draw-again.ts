import type { RandomStream } from '../../random';

/** More tries than any draw needs that can be met at all. */
const TRIES = 200;

type Streams = (name: string) => RandomStream;

/**
 * Draws until nothing can be disputed about what was drawn.
 *
 * @param attempt  Undefined for a draw that is to be drawn again.
 * @throws RangeError when no try is any good.
 */
export function drawAgain<T>(stream: Streams, attempt: (stream: Streams) => T | undefined): T {
  const drawn = drawIfAny(stream, attempt);
  if (drawn === undefined) throw new RangeError('Nothing could be drawn that is beyond dispute');
  return drawn;
}

/** The same; undefined when no try is any good. */
export function drawIfAny<T>(
  stream: Streams,
  attempt: (stream: Streams) => T | undefined,
  tries = TRIES,
): T | undefined {
  for (let number = 0; number < tries; number++) {
    const drawn = attempt((name) => stream(`${name} ${number}`));
    if (drawn !== undefined) return drawn;
  }
  return undefined;
}
