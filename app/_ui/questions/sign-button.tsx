'use client';

import { useRef } from 'react';
import styles from './question.module.css';

/** A field for a number with a button that changes its sign: the number pad of some phones has no minus. */
export function SignButton({ label, children }: { label: string; children: React.ReactNode }) {
  const here = useRef<HTMLSpanElement>(null);
  function change() {
    const input = here.current?.querySelector('input');
    if (!input) return;
    const typed = input.value.trim();
    input.value = typed.startsWith('-') ? typed.slice(1) : `-${typed}`;
    input.dispatchEvent(new Event('input', { bubbles: true }));
    input.focus();
  }
  return (
    <span ref={here} className={styles.signed}>
      <button type="button" className={styles.sign} aria-label={label} onClick={change}>
        ±
      </button>
      {children}
    </span>
  );
}
