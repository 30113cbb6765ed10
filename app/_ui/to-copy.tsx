'use client';

import ui from './ui.module.css';

/** Something to hand on, all of it marked as soon as one is in it, since not every shop's page may reach the clipboard. */
export function ToCopy({ text, label }: { text: string; label: string }) {
  return (
    <input
      className={ui.code}
      readOnly
      value={text}
      size={Math.max(12, text.length)}
      aria-label={label}
      onFocus={(event) => event.currentTarget.select()}
    />
  );
}
