/** A table with evenly spaced rows, as somebody reads it: straight on between two rows. */
export interface PrintedTable {
  from: number;
  step: number;
  values: readonly number[];
}

/** @throws RangeError beside the table. */
export function readTable({ from, step, values }: PrintedTable, at: number): number {
  const place = (at - from) / step;
  const row = Math.min(Math.floor(place), values.length - 2);
  const [lower, upper] = [values[row], values[row + 1]];
  if (place < 0 || place > values.length - 1 || lower === undefined || upper === undefined)
    throw new RangeError(`The table has nothing for ${at}`);
  return lower + (place - row) * (upper - lower);
}

/** What heads each row. */
export function headsOf({ from, step, values }: PrintedTable): number[] {
  return values.map((_, row) => from + row * step);
}
