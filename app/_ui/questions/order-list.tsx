'use client';

import {
  type Announcements,
  closestCenter,
  DndContext,
  type DragEndEvent,
  KeyboardSensor,
  PointerSensor,
  type UniqueIdentifier,
  useSensor,
  useSensors,
} from '@dnd-kit/core';
import {
  arrayMove,
  SortableContext,
  sortableKeyboardCoordinates,
  verticalListSortingStrategy,
} from '@dnd-kit/sortable';
import { useEffect, useId, useRef, useState } from 'react';
import { useHydrated } from '../hydrated';
import ui from '../ui.module.css';
import styles from './order.module.css';
import { type OrderItem, OrderRow } from './order-row';

export interface OrderWords {
  label: string;
  /** How items are moved. */
  hint: string;
  drag: string;
  up: string;
  down: string;
  lifted: string;
  dropped: string;
  cancelled: string;
  /** “place 2 of 5”, for each place. */
  places: readonly string[];
}

export interface OrderListProps {
  /** In the order in which they lie. */
  items: readonly OrderItem[];
  words: OrderWords;
}

/** Nothing but the up and down of a list; the space bar takes an item up, since Enter sends the form. */
const KEYS = { start: ['Space'], cancel: ['Escape'], end: ['Space', 'Enter'] };

/** Items that are dragged, or moved by the buttons on each. */
export function OrderList({ items, words }: OrderListProps) {
  const id = useId();
  const [order, setOrder] = useState(() => items.map((item) => item.id));
  const [said, setSaid] = useState('');
  const list = useRef<HTMLOListElement>(null);
  const pressed = useRef<{ id: string; way: string }>(undefined);
  const hydrated = useHydrated();
  const sensors = useSensors(
    useSensor(PointerSensor, { activationConstraint: { distance: 4 } }),
    useSensor(KeyboardSensor, { coordinateGetter: sortableKeyboardCoordinates, keyboardCodes: KEYS }),
  );
  const moved = order.join();
  const first = useRef(moved);
  useEffect(() => {
    // React may take the pressed button's row out of the page and put it back, and the keyboard would be lost.
    if (pressed.current) {
      const { id: row, way } = pressed.current;
      list.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(row)}"] [data-way="${way}"]`)?.focus();
      pressed.current = undefined;
    }
    // Hidden fields tell nobody that they have changed.
    if (first.current !== moved) list.current?.dispatchEvent(new Event('change', { bubbles: true }));
    first.current = moved;
  }, [moved]);

  const nameOf = (item: UniqueIdentifier) => items.find((one) => one.id === item)?.name ?? '';
  const placeOf = (item: UniqueIdentifier | undefined) => words.places[order.indexOf(String(item))] ?? '';
  const announcements: Announcements = {
    onDragStart: ({ active }) => `${words.lifted} ${nameOf(active.id)}, ${placeOf(active.id)}.`,
    onDragOver: ({ active, over }) => `${nameOf(active.id)}, ${placeOf(over?.id)}.`,
    onDragEnd: ({ active, over }) => `${words.dropped} ${nameOf(active.id)}, ${placeOf(over?.id ?? active.id)}.`,
    onDragCancel: ({ active }) => `${words.cancelled} ${nameOf(active.id)}.`,
  };

  function drop({ active, over }: DragEndEvent) {
    if (over) setOrder((now) => arrayMove(now, now.indexOf(String(active.id)), now.indexOf(String(over.id))));
  }

  function step(item: string, by: 1 | -1) {
    const [from, to] = [order.indexOf(item), order.indexOf(item) + by];
    if (to < 0 || to >= order.length) return;
    pressed.current = { id: item, way: by < 0 ? 'up' : 'down' };
    setOrder(arrayMove(order, from, to));
    setSaid(`${nameOf(item)}, ${words.places[to]}.`);
  }

  return (
    <DndContext
      id={id}
      sensors={sensors}
      collisionDetection={closestCenter}
      onDragEnd={drop}
      accessibility={{ announcements, screenReaderInstructions: { draggable: words.hint } }}
    >
      <SortableContext items={order} strategy={verticalListSortingStrategy}>
        <ol ref={list} className={styles.order} aria-label={words.label}>
          {order.map((item, place) => {
            const found = items.find((one) => one.id === item);
            if (!found) return null;
            return (
              <OrderRow
                key={item}
                item={found}
                place={place}
                count={order.length}
                words={words}
                usable={hydrated}
                onStep={step}
              />
            );
          })}
        </ol>
      </SortableContext>
      <div role="status" className={ui.unseen}>
        {said}
      </div>
    </DndContext>
  );
}
