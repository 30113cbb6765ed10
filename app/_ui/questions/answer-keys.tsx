'use client';

import { useEffect, useRef, useSyncExternalStore } from 'react';
import styles from './question.module.css';

export interface KeyWords {
  enter: string;
  /** What the arrow keys do. */
  move?: string;
  turnOff: string;
  turnOn: string;
  /** What number keys do, and that they are turned off. */
  choose?: string;
  off: string;
}

/**
 * Lets number keys choose among the inputs called `field`, in the order of the page, and Enter send the form from wherever
 * the keyboard stands. Number keys can be turned off: whoever speaks to their machine may press them without meaning to.
 */
export function AnswerKeys({ field, words }: { field?: string; words: KeyWords }) {
  const here = useRef<HTMLDivElement>(null);
  const on = useSyncExternalStore(listen, isOn, () => true) || !field;
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const form = here.current?.closest('form');
      if (!form || isTaken(event)) return;
      if (event.key === 'Enter' && !isControl(event.target)) form.requestSubmit();
      else if (field && on && /^[1-9]$/.test(event.key)) choose(form, field, Number(event.key), event);
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, [field, on]);
  return (
    <div ref={here} className={styles.keys}>
      <p>{[on ? words.choose : words.off, words.move, words.enter].filter(Boolean).join(' ')}</p>
      {field && (
        <button type="button" className={styles.link} onClick={() => turn(!on)}>
          {on ? words.turnOff : words.turnOn}
        </button>
      )}
    </div>
  );
}

function choose(form: HTMLFormElement, field: string, number: number, event: KeyboardEvent): void {
  const inputs = form.querySelectorAll<HTMLInputElement>(`input[name="${field}"]`);
  const input = inputs[number - 1];
  if (!input || input.disabled) return;
  event.preventDefault();
  input.focus();
  input.click();
}

/** Held for something else: a shortcut, a field that is typed in, a key that repeats itself. */
function isTaken(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.repeat || event.isComposing) return true;
  return event.ctrlKey || event.altKey || event.metaKey || isTypedIn(event.target);
}

function isTypedIn(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !['radio', 'checkbox', 'button', 'submit'].includes(target.type);
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || ['TEXTAREA', 'SELECT'].includes(target.tagName);
}

/** Something that Enter already means something to. */
function isControl(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('a, button, input, select, textarea, summary') !== null;
}

const STORED = 'number-keys';
const listeners = new Set<() => void>();

function listen(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

function isOn(): boolean {
  try {
    return localStorage.getItem(STORED) !== 'off';
  } catch {
    // A browser may keep nothing; then they are on again with every page.
    return true;
  }
}

function turn(on: boolean): void {
  try {
    localStorage.setItem(STORED, on ? 'on' : 'off');
  } catch {
    return;
  }
  for (const changed of listeners) changed();
}
