'use client';

import { useTransition } from 'react';
import { chooseDisplay } from './choose-display';
import styles from './site-header.module.css';

/** A drop-down whose choice counts at once. */
export function Choice({
  name,
  label,
  value,
  options,
}: {
  name: 'units' | 'theme';
  label: string;
  value: string;
  options: readonly { value: string; label: string }[];
}) {
  const [, startTransition] = useTransition();
  return (
    <select
      className={styles.choice}
      aria-label={label}
      defaultValue={value}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        // Without an answer the page stays as it is; nothing that matters is lost.
        startTransition(async () => {
          await chooseDisplay({ [name]: chosen }).catch(() => undefined);
        });
      }}
    >
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.label}
        </option>
      ))}
    </select>
  );
}
