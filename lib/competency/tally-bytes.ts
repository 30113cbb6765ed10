import { GRID, type OnGrid } from './grid';

/** A tally's sum to be stored: floats of 8 bytes, the least significant byte first on every machine. */
export function toBytes(sum: OnGrid): Uint8Array {
  const view = new DataView(new ArrayBuffer(8 * GRID.length));
  for (let at = 0; at < GRID.length; at++) view.setFloat64(8 * at, sum[at] as number, true);
  return new Uint8Array(view.buffer);
}

/** @throws RangeError where the bytes are not those of a sum. */
export function fromBytes(bytes: Uint8Array): OnGrid {
  if (bytes.byteLength !== 8 * GRID.length)
    throw new RangeError(`A sum on the grid has ${8 * GRID.length} bytes, here are ${bytes.byteLength}`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const sum = new Float64Array(GRID.length);
  for (let at = 0; at < sum.length; at++) sum[at] = view.getFloat64(8 * at, true);
  return sum;
}
