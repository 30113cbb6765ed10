import type { ReactNode } from 'react';
import ui from './ui.module.css';

/** A box for what may be wider than a phone: it scrolls sideways, by the keyboard too, and the page does not. */
export function Sideways({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard
    <section className={ui.sideways} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
