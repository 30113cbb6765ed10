import { type ColumnId, directionColumns } from './direction-columns';

/** What a cause moves, by column: two signs, at severities 0.3 and 0.9. */
export type Moves = Partial<Record<ColumnId, string>>;
/** Rows by cause, each a list of `column:xy`. */
export type Rows = Record<string, string>;

/** What a row says. */
export function movesOf(row: string): Moves {
  return Object.fromEntries(
    row.split(' ').flatMap((cell) => {
      if (cell === '') return [];
      const [column = '', signs = ''] = cell.split(':');
      if (!(column in directionColumns) || !/^[-+=]{2}$/.test(signs)) throw new Error(`No cell: ${cell}`);
      return [[column, signs]];
    }),
  );
}

/** Another rig's rows, cell by cell but for the exceptions. */
export function withExceptions(rows: Rows, exceptions: Rows): Rows {
  const unknown = Object.keys(exceptions).filter((cause) => rows[cause] === undefined);
  if (unknown.length > 0) throw new Error(`Exceptions to no row: ${unknown.join(', ')}`);
  return Object.fromEntries(Object.entries(rows).map(([cause, row]) => [cause, merged(row, exceptions[cause] ?? '')]));
}

function merged(row: string, exceptions: string): string {
  return Object.entries({ ...movesOf(row), ...movesOf(exceptions) })
    .map(([column, signs]) => `${column}:${signs}`)
    .join(' ');
}
