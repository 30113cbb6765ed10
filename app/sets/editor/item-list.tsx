'use client';

import { useRef, useState } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import { withValues } from '@/app/_ui/with-values';
import type { FieldFault } from '@/app/questions/draft-answer';
import { movedBy, RowButtons } from '@/app/questions/editor/row-buttons';
import styles from '../sets.module.css';
import { type DraftItem, freeItemId, newItem } from './draft';
import { ItemFields } from './item-fields';
import { itemInWords } from './item-in-words';
import type { SetChoices, SetWords } from './set-words';

const kinds = ['cases', 'questions', 'written', 'case'] as const;

/** The items of a set in their order. Each is a line, and opens to be changed. */
export function ItemList({
  items,
  words,
  choices,
  faults,
  onChange,
  onPreview,
}: {
  items: readonly DraftItem[];
  words: SetWords;
  choices: SetChoices;
  faults: readonly FieldFault[];
  onChange: (items: readonly DraftItem[]) => void;
  onPreview: (item: DraftItem) => void;
}) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const adding = useRef<HTMLDivElement>(null);
  const hydrated = useHydrated();
  const isOff = (id: string) => faults.some(({ at }) => at.startsWith(`items.${id}.`));

  function toggle(id: string) {
    setOpen((before) => new Set(before.has(id) ? [...before].filter((one) => one !== id) : [...before, id]));
  }

  function add(kind: DraftItem['kind']) {
    const id = freeItemId(items);
    onChange([...items, newItem(kind, id)]);
    setOpen((before) => new Set([...before, id]));
    requestAnimationFrame(() => focusFirst(`item-${id}`));
  }

  function remove(index: number) {
    onChange(items.filter((_, at) => at !== index));
    // The keyboard would be lost with the row.
    const next = items[index + 1] ?? items[index - 1];
    requestAnimationFrame(() =>
      next
        ? document.getElementById(`edit-${next.id}`)?.focus()
        : adding.current?.querySelector<HTMLElement>('button')?.focus(),
    );
  }

  return (
    <fieldset className={ui.stack}>
      <legend className={styles.legend}>{words.items}</legend>
      {items.length === 0 && <p className={ui.small}>{words.noItems}</p>}
      <ol className={styles.items}>
        {items.map((item, index) => {
          const label = withValues(words.item, { n: index + 1 });
          const isOpen = open.has(item.id) || isOff(item.id);
          return (
            <li key={item.id} id={`item-${item.id}`} className={styles.item}>
              <p>
                <b className={ui.code}>{index + 1}</b> {itemInWords(item, words, choices)}
              </p>
              {isOpen && (
                <div className={ui.stack} id={`fields-${item.id}`}>
                  <ItemFields
                    item={item}
                    words={words}
                    choices={choices}
                    onChange={(next) => onChange(items.map((one) => (one.id === item.id ? next : one)))}
                  />
                </div>
              )}
              <div className={styles.rowButtons}>
                <button
                  id={`edit-${item.id}`}
                  type="button"
                  disabled={!hydrated}
                  aria-expanded={isOpen}
                  aria-label={`${isOpen ? words.close : words.edit}: ${label}`}
                  onClick={() => toggle(item.id)}
                >
                  {isOpen ? words.close : words.edit}
                </button>
                <button
                  type="button"
                  disabled={!hydrated}
                  aria-label={`${words.preview}: ${label}`}
                  onClick={() => onPreview(item)}
                >
                  {words.preview}
                </button>
                <RowButtons
                  id={`row-${item.id}`}
                  label={label}
                  index={index}
                  count={items.length}
                  least={0}
                  onMove={(by) => onChange(movedBy(items, index, by))}
                  onRemove={() => remove(index)}
                />
              </div>
            </li>
          );
        })}
      </ol>
      <div ref={adding} className={styles.buttons}>
        {kinds.map((kind) => (
          <button key={kind} type="button" disabled={!hydrated} onClick={() => add(kind)}>
            {words.add[kind]}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

function focusFirst(id: string): void {
  document.getElementById(id)?.querySelector<HTMLElement>('input, select')?.focus();
}
