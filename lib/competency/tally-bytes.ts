import { GRID } from './grid';
import type { Tally } from './tally';

/** Three numbers and the grid's, each a float of 8 bytes, the least significant first on every machine. */
const NUMBERS = 3 + GRID.length;

/** A tally to be stored. */
export function toBytes({ at, count, weight, sum }: Tally): Uint8Array {
  const view = new DataView(new ArrayBuffer(8 * NUMBERS));
  for (const [place, number] of [at, count, weight].entries()) view.setFloat64(8 * place, number, true);
  for (let place = 0; place < sum.length; place++) view.setFloat64(8 * (3 + place), sum[place] as number, true);
  return new Uint8Array(view.buffer);
}

/** @throws RangeError where the bytes are not those of a tally. */
export function fromBytes(bytes: Uint8Array): Tally {
  if (bytes.byteLength !== 8 * NUMBERS)
    throw new RangeError(`A tally has ${8 * NUMBERS} bytes, here are ${bytes.byteLength}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const sum = new Float64Array(GRID.length);
  for (let place = 0; place < sum.length; place++) sum[place] = view.getFloat64(8 * (3 + place), true);
  const [at, count, weight] = [0, 1, 2].map((place) => view.getFloat64(8 * place, true)) as [number, number, number];
  return { at, sum, count, weight };
}
