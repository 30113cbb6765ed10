'use client';

import { useSortable } from '@dnd-kit/sortable';
import { useId } from 'react';
import styles from './order.module.css';
import type { OrderWords } from './order-list';

export interface OrderItem {
  id: string;
  /** Plain words. */
  name: string;
  words: React.ReactNode;
}

/** One item with its handle, its place, and a button for each way. */
export function OrderRow({
  item: { id, words: shown },
  place,
  count,
  words,
  usable,
  onStep,
}: {
  item: OrderItem;
  /** From 0. */
  place: number;
  count: number;
  words: OrderWords;
  usable: boolean;
  onStep: (id: string, by: 1 | -1) => void;
}) {
  const name = useId();
  const { attributes, listeners, setNodeRef, setActivatorNodeRef, transform, transition, isDragging } = useSortable({
    id,
  });
  const moved = transform ? { transform: `translate3d(0, ${Math.round(transform.y)}px, 0)`, transition } : undefined;
  return (
    <li ref={setNodeRef} data-row={id} className={`${styles.row} ${isDragging ? styles.lifted : ''}`} style={moved}>
      <input type="hidden" name="order" value={id} />
      <button
        {...attributes}
        {...listeners}
        ref={setActivatorNodeRef}
        type="button"
        className={styles.handle}
        disabled={!usable}
        aria-label={words.drag}
        aria-labelledby={undefined}
        aria-describedby={`${attributes['aria-describedby']} ${name}`}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
          <path d="M2 4H14M2 8H14M2 12H14" />
        </svg>
      </button>
      <span className={styles.place}>{place + 1}</span>
      <span id={name} className={styles.text}>
        {shown}
      </span>
      <Step way="up" label={words.up} name={name} off={!usable || place === 0} onPress={() => onStep(id, -1)} />
      <Step
        way="down"
        label={words.down}
        name={name}
        off={!usable || place === count - 1}
        onPress={() => onStep(id, 1)}
      />
    </li>
  );
}

const ARROWS = { up: 'M8 13V3M3.5 7.5L8 3L12.5 7.5', down: 'M8 3V13M3.5 8.5L8 13L12.5 8.5' };

/** Stays where the keyboard stands at the end of the list, without effect. */
function Step({
  way,
  label,
  name,
  off,
  onPress,
}: {
  way: keyof typeof ARROWS;
  label: string;
  /** Id of what it moves. */
  name: string;
  off: boolean;
  onPress: () => void;
}) {
  const id = useId();
  return (
    <button
      id={id}
      type="button"
      className={styles.step}
      data-way={way}
      aria-label={label}
      aria-labelledby={`${id} ${name}`}
      aria-disabled={off}
      onClick={() => !off && onPress()}
    >
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d={ARROWS[way]} />
      </svg>
    </button>
  );
}
