'use client';

import { useEffect, useRef } from 'react';
import styles from './drawing.module.css';

/**
 * A box in which a drawing that is wider than the screen is moved sideways.
 *
 * @param at  What has to be in view at first, as a share of the drawing's width.
 */
export function Pan({ at, label, children }: { at?: number | undefined; label: string; children: React.ReactNode }) {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    const { current } = box;
    if (current && at !== undefined) current.scrollLeft = at * current.scrollWidth - current.clientWidth / 2;
  }, [at]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard
    <section ref={box} className={styles.pan} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
