import type { RandomStream } from '../../random';

/** More tries than any draw needs that can be met at all. */
const TRIES = 200;

/**
 * Draws until nothing can be disputed about what was drawn.
 *
 * @param attempt  Undefined for a draw that is to be drawn again.
 * @throws RangeError when no try is any good.
 */
export function drawAgain<T>(
  stream: (name: string) => RandomStream,
  attempt: (stream: (name: string) => RandomStream) => T | undefined,
): T {
  for (let number = 0; number < TRIES; number++) {
    const drawn = attempt((name) => stream(`${name} ${number}`));
    if (drawn !== undefined) return drawn;
  }
  throw new RangeError('Nothing could be drawn that is beyond dispute');
}
