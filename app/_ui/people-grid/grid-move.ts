/** Where somebody is in the grid: row −1 is the head; column −2 the names, −1 what sums each person up. */
export interface At {
  row: number;
  column: number;
}

export const HEAD_ROW = -1;
export const NAME_COLUMN = -2;
export const SUMMARY_COLUMN = -1;

interface Size {
  rows: number;
  columns: number;
  /** Rows that a page of the keyboard goes. */
  page: number;
}

/** Where a key leads from a place; undefined for a key that leads nowhere. */
export function movedBy(
  key: string,
  ctrl: boolean,
  { row, column }: At,
  { rows, columns, page }: Size,
): At | undefined {
  const to = (toRow: number, toColumn: number): At => ({
    row: Math.max(HEAD_ROW, Math.min(rows - 1, toRow)),
    column: Math.max(NAME_COLUMN, Math.min(columns - 1, toColumn)),
  });
  switch (key) {
    case 'ArrowDown':
      return to(row + 1, column);
    case 'ArrowUp':
      return to(row - 1, column);
    case 'ArrowRight':
      return to(row, column + 1);
    case 'ArrowLeft':
      return to(row, column - 1);
    case 'PageDown':
      return to(row + page, column);
    case 'PageUp':
      return to(row - page, column);
    case 'Home':
      return ctrl ? to(0, NAME_COLUMN) : to(row, NAME_COLUMN);
    case 'End':
      return ctrl ? to(rows - 1, columns - 1) : to(row, columns - 1);
    default:
      return undefined;
  }
}
