'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import { useRouter } from 'next/navigation';
import { type KeyboardEvent, useRef, useState } from 'react';
import type { BookAssignment, BookPerson, View } from '@/lib/gradebook/book';
import { meanOf } from '@/lib/gradebook/book';
import { BookCell, type CellWords } from './book-cell';
import styles from './gradebook.module.css';
import { type At, HEAD_ROW, MEAN_COLUMN, movedBy, NAME_COLUMN } from './grid-move';

const ROW = 44;
const COLUMN = 112;
/** Rows and columns drawn beyond what is seen. */
const BEYOND = 6;
const PAGE = 10;

export interface GridWords extends CellWords {
  grid: string;
  person: string;
  mean: string;
}

/**
 * People × assignments. Only what is seen is drawn, so that thousands of cells scroll like a few; arrow keys go through it,
 * Enter opens what a cell or sorts by what a head says.
 */
export function BookGrid({
  assignments,
  people,
  view,
  words,
  sort,
}: {
  assignments: readonly BookAssignment[];
  people: readonly BookPerson[];
  view: View;
  words: GridWords;
  sort: (by: string) => void;
}) {
  const box = useRef<HTMLDivElement>(null);
  const router = useRouter();
  const [wanted, goTo] = useState<At>({ row: 0, column: NAME_COLUMN });
  const at = { ...wanted, row: Math.min(wanted.row, people.length - 1) };
  const scroller = { getScrollElement: () => box.current, overscan: BEYOND };
  const rows = useVirtualizer({
    ...scroller,
    count: people.length,
    estimateSize: () => ROW,
    initialRect: { width: 1200, height: 900 },
  });
  const columns = useVirtualizer({
    ...scroller,
    count: assignments.length,
    estimateSize: () => COLUMN,
    horizontal: true,
    initialRect: { width: 1200, height: 900 },
  });

  function press(event: KeyboardEvent) {
    const size = { rows: people.length, columns: assignments.length, page: PAGE };
    const to = movedBy(event.key, event.ctrlKey, at, size);
    if (to) {
      event.preventDefault();
      goTo(to);
      if (to.row >= 0) rows.scrollToIndex(to.row);
      if (to.column >= 0) columns.scrollToIndex(to.column);
      return;
    }
    if (event.key !== 'Enter') return;
    event.preventDefault();
    if (at.row === HEAD_ROW) sort(sortOf(at.column, assignments));
    const cell = people[at.row]?.cells[at.column];
    const href = cell && hrefOf(people[at.row], assignments[at.column], cell.state);
    if (href) router.push(href);
  }

  const drawn = columns.getVirtualItems();
  const head = (column: number, text: string) => (
    <Head
      key={column}
      at={{ row: HEAD_ROW, column }}
      is={at}
      sorted={view.sort === sortOf(column, assignments) ? view.down : undefined}
      press={() => sort(sortOf(column, assignments))}
      left={column < 0 ? undefined : leftOf(column)}
    >
      {text}
    </Head>
  );

  return (
    <div ref={box} className={styles.box}>
      <table
        className={styles.grid}
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are gone through is a grid
        role="grid"
        tabIndex={0}
        aria-label={words.grid}
        aria-rowcount={people.length + 1}
        aria-colcount={assignments.length + 2}
        aria-activedescendant={idOf(at)}
        onKeyDown={press}
        style={{ width: `calc(var(--names) + var(--means) + ${columns.getTotalSize()}px)` }}
      >
        <thead>
          <tr className={styles.headRow} aria-rowindex={1}>
            {head(NAME_COLUMN, words.person)}
            {head(MEAN_COLUMN, words.mean)}
            {drawn.map(({ index }) => {
              const assignment = assignments[index];
              return assignment && head(index, assignment.title);
            })}
          </tr>
        </thead>
        <tbody style={{ height: rows.getTotalSize() }}>
          {rows.getVirtualItems().map(({ index, start }) => {
            const person = people[index];
            return (
              person && (
                <tr
                  key={person.id}
                  className={styles.row}
                  style={{ transform: `translateY(${start}px)` }}
                  aria-rowindex={index + 2}
                >
                  <th scope="row" {...cellAt({ row: index, column: NAME_COLUMN }, at, styles.name)}>
                    {person.name}
                  </th>
                  <td {...cellAt({ row: index, column: MEAN_COLUMN }, at, styles.mean)}>{shownMean(person)}</td>
                  {drawn.map((column) => {
                    const cell = person.cells[column.index];
                    return (
                      cell && (
                        <td
                          key={column.index}
                          {...cellAt({ row: index, column: column.index }, at, styles.cell)}
                          style={{ left: leftOf(column.index) }}
                        >
                          <BookCell
                            cell={cell}
                            href={hrefOf(person, assignments[column.index], cell.state)}
                            words={words}
                          />
                        </td>
                      )
                    );
                  })}
                </tr>
              )
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function Head({
  at,
  is,
  sorted,
  press,
  left,
  children,
}: {
  at: At;
  is: At;
  /** Whether the other way round, where the grid is sorted by this. */
  sorted: boolean | undefined;
  press: () => void;
  left: string | undefined;
  children: string;
}) {
  const kind = at.column === NAME_COLUMN ? styles.name : at.column < 0 ? styles.mean : styles.cell;
  return (
    <th
      scope="col"
      {...cellAt(at, is, kind)}
      aria-sort={sorted === undefined ? 'none' : sorted ? 'descending' : 'ascending'}
      style={left === undefined ? undefined : { left }}
      title={children}
    >
      <button type="button" tabIndex={-1} onClick={press}>
        <span className={styles.clamped}>{children}</span>
        {sorted !== undefined && <span aria-hidden="true">{sorted ? '↓' : '↑'}</span>}
      </button>
    </th>
  );
}

function leftOf(column: number): string {
  return `calc(var(--names) + var(--means) + ${column * COLUMN}px)`;
}

function cellAt(at: At, is: At, kind: string | undefined) {
  const active = at.row === is.row && at.column === is.column;
  return {
    id: idOf(at),
    className: [kind, active && styles.active].filter(Boolean).join(' '),
    'aria-colindex': at.column + 3,
  };
}

function idOf({ row, column }: At): string {
  return `cell-${row + 1}-${column + 2}`;
}

function sortOf(column: number, assignments: readonly BookAssignment[]): string {
  if (column === NAME_COLUMN) return 'name';
  return column < 0 ? 'mean' : (assignments[column]?.id ?? 'name');
}

function hrefOf(
  person: BookPerson | undefined,
  assignment: BookAssignment | undefined,
  state: BookPerson['cells'][number]['state'],
): string | undefined {
  const begun = ['open', 'waiting', 'done'].includes(state);
  if (!person || !assignment || !begun) return undefined;
  return `/gradebook/turns?${new URLSearchParams({ person: person.id, assignment: assignment.id })}`;
}

function shownMean({ cells }: BookPerson): string {
  const mean = meanOf(cells);
  return mean === null ? '–' : mean.toFixed(0);
}
