'use client';

import styles from './editor.module.css';
import { useEditor } from './editor-context';

/** Moves a row of a list, or takes it out. */
export function RowButtons({
  id,
  label,
  index,
  count,
  least,
  onMove,
  onRemove,
}: {
  /** Unique on the page: the keyboard stays with the row that it moved. */
  id: string;
  label: string;
  index: number;
  count: number;
  /** So many have to stay. */
  least: number;
  /** Where rows have no order, they are not moved. */
  onMove?: (by: 1 | -1) => void;
  onRemove: () => void;
}) {
  const { words } = useEditor();
  const move = (by: 1 | -1) => {
    onMove?.(by);
    const isAtEnd = by < 0 ? index === 1 : index === count - 2;
    // At the end of its way a button is turned off, and the keyboard would fall off it.
    const next = isAtEnd === by > 0 ? 'up' : 'down';
    requestAnimationFrame(() => document.getElementById(`${id}-${next}`)?.focus());
  };
  return (
    <div className={styles.rowButtons}>
      {onMove && (
        <>
          <button
            id={`${id}-up`}
            type="button"
            disabled={index === 0}
            aria-label={`${words.up}: ${label}`}
            onClick={() => move(-1)}
          >
            {words.up}
          </button>
          <button
            id={`${id}-down`}
            type="button"
            disabled={index === count - 1}
            aria-label={`${words.down}: ${label}`}
            onClick={() => move(1)}
          >
            {words.down}
          </button>
        </>
      )}
      <button type="button" disabled={count <= least} aria-label={`${words.remove}: ${label}`} onClick={onRemove}>
        {words.remove}
      </button>
    </div>
  );
}

/** The list with one item moved by one place. */
export function movedBy<T>(items: readonly T[], index: number, by: 1 | -1): T[] {
  const moved = [...items];
  const [item] = moved.splice(index, 1);
  if (item !== undefined) moved.splice(index + by, 0, item);
  return moved;
}

/** The list with one item changed. */
export function changedAt<T>(items: readonly T[], index: number, changes: Partial<T>): T[] {
  return items.map((item, at) => (at === index ? { ...item, ...changes } : item));
}
