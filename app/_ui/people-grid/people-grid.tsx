'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { type KeyboardEvent, useRef, useState } from 'react';
import { type At, HEAD_ROW, movedBy, NAME_COLUMN, SUMMARY_COLUMN } from './grid-move';
import styles from './people-grid.module.css';

const ROW = 44;
const COLUMN = 112;
/** Rows and columns drawn beyond what is seen. */
const BEYOND = 6;
const PAGE = 10;

export interface GridColumn {
  id: string;
  title: string;
}

export interface PeopleGridProps<P extends { id: string; name: string }> {
  words: { grid: string; person: string };
  people: readonly P[];
  /** What sums each person up: stays in sight beside their name. */
  summary: GridColumn & { shown: (person: P) => React.ReactNode; isNumber?: boolean };
  columns: readonly GridColumn[];
  /** What stands in a cell; undefined for nothing at all. */
  cell: (person: P, column: number) => React.ReactNode;
  /** Where a cell leads; undefined for nowhere. From a name as well, where the column is −2 or −1. */
  hrefOf: (person: P, column: number) => string | undefined;
  sorted: { by: string; down: boolean };
  sort: (by: string) => void;
  /** Told where somebody is; the row is −1 in the head. */
  onAt?: (person: P | undefined, column: number) => void;
  /** Sets `--summary`, the width of the summing column. */
  className?: string | undefined;
}

/**
 * People × columns. Only what is seen is drawn, so that thousands of cells scroll like a few; arrow keys go through it, Enter
 * opens what a cell or sorts by what a head says.
 */
export function PeopleGrid<P extends { id: string; name: string }>(props: PeopleGridProps<P>) {
  const { words, people, summary, columns, hrefOf, sorted, sort, onAt, className } = props;
  const box = useRef<HTMLDivElement>(null);
  const router = useRouter();
  const [wanted, setWanted] = useState<At>({ row: 0, column: NAME_COLUMN });
  const at = { ...wanted, row: Math.min(wanted.row, people.length - 1) };
  const scroller = {
    getScrollElement: () => box.current,
    overscan: BEYOND,
    initialRect: { width: 1200, height: 900 },
  };
  const rows = useVirtualizer({ ...scroller, count: people.length, estimateSize: () => ROW });
  const across = useVirtualizer({
    ...scroller,
    count: columns.length,
    estimateSize: () => COLUMN,
    horizontal: true,
  });
  const sortIdOf = (column: number) =>
    column === NAME_COLUMN ? 'name' : column === SUMMARY_COLUMN ? summary.id : (columns[column]?.id ?? 'name');

  function goTo(to: At) {
    setWanted(to);
    if (to.row >= 0) rows.scrollToIndex(to.row);
    if (to.column >= 0) across.scrollToIndex(to.column);
    onAt?.(people[to.row], to.column);
  }

  function press(event: KeyboardEvent) {
    const to = movedBy(event.key, event.ctrlKey, at, { rows: people.length, columns: columns.length, page: PAGE });
    if (to) {
      event.preventDefault();
      return goTo(to);
    }
    if (event.key !== 'Enter') return;
    event.preventDefault();
    if (at.row === HEAD_ROW) sort(sortIdOf(at.column));
    const person = people[at.row];
    const href = person && hrefOf(person, at.column);
    if (href) router.push(href);
  }

  const drawn = across.getVirtualItems();
  const head = (column: number, text: string) => (
    <Head
      key={column}
      at={{ row: HEAD_ROW, column }}
      is={at}
      sorted={sorted.by === sortIdOf(column) ? sorted.down : undefined}
      press={() => sort(sortIdOf(column))}
      kind={kindOf(column, summary.isNumber)}
    >
      {text}
    </Head>
  );

  return (
    <div ref={box} className={[styles.box, className].filter(Boolean).join(' ')}>
      <table
        className={styles.grid}
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are gone through is a grid
        role="grid"
        tabIndex={0}
        aria-label={words.grid}
        aria-rowcount={people.length + 1}
        aria-colcount={columns.length + 2}
        aria-activedescendant={idOf(at)}
        onKeyDown={press}
        style={{ width: `calc(var(--names) + var(--summary) + ${across.getTotalSize()}px)` }}
      >
        <thead>
          <tr className={styles.headRow} aria-rowindex={1}>
            {head(NAME_COLUMN, words.person)}
            {head(SUMMARY_COLUMN, summary.title)}
            {drawn.map(({ index }) => {
              const column = columns[index];
              return column && head(index, column.title);
            })}
          </tr>
        </thead>
        <tbody style={{ height: rows.getTotalSize() }}>
          {rows.getVirtualItems().map(({ index, start }) => {
            const person = people[index];
            return (
              person && (
                <PersonRow key={person.id} {...props} person={person} row={index} start={start} at={at} drawn={drawn} />
              )
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function PersonRow<P extends { id: string; name: string }>({
  person,
  row,
  start,
  at,
  drawn,
  summary,
  cell,
  hrefOf,
}: PeopleGridProps<P> & {
  person: P;
  row: number;
  start: number;
  at: At;
  drawn: readonly { index: number }[];
}) {
  const place = (column: number) => cellAt({ row, column }, at, kindOf(column, summary.isNumber));
  return (
    <tr className={styles.row} style={{ transform: `translateY(${start}px)` }} aria-rowindex={row + 2}>
      <th scope="row" {...place(NAME_COLUMN)}>
        <Way href={hrefOf(person, NAME_COLUMN)}>{person.name}</Way>
      </th>
      <td {...place(SUMMARY_COLUMN)}>
        <Way href={hrefOf(person, SUMMARY_COLUMN)}>{summary.shown(person)}</Way>
      </td>
      {drawn.map(({ index }) => {
        const shown = cell(person, index);
        return (
          shown !== undefined && (
            <td key={index} {...place(index)} style={{ left: leftOf(index) }}>
              <Way href={hrefOf(person, index)}>{shown}</Way>
            </td>
          )
        );
      })}
    </tr>
  );
}

/** What a pointer follows; the keyboard opens a cell from the grid. */
function Way({ href, children }: { href: string | undefined; children: React.ReactNode }) {
  if (!href) return children;
  return (
    <Link className={styles.way} href={href} prefetch={false} tabIndex={-1}>
      {children}
    </Link>
  );
}

function Head({
  at,
  is,
  sorted,
  press,
  kind,
  children,
}: {
  at: At;
  is: At;
  /** Whether the other way round, where the grid is sorted by this. */
  sorted: boolean | undefined;
  press: () => void;
  kind: string | undefined;
  children: string;
}) {
  return (
    <th
      scope="col"
      {...cellAt(at, is, kind)}
      aria-sort={sorted === undefined ? 'none' : sorted ? 'descending' : 'ascending'}
      style={at.column < 0 ? undefined : { left: leftOf(at.column) }}
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
  return `calc(var(--names) + var(--summary) + ${column * COLUMN}px)`;
}

function kindOf(column: number, isNumber = false): string | undefined {
  if (column === NAME_COLUMN) return styles.name;
  if (column !== SUMMARY_COLUMN) return styles.cell;
  return isNumber ? `${styles.summary} ${styles.number}` : styles.summary;
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
