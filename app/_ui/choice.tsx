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
  const [pending, startTransition] = useTransition();
  return (
    <select
      key={value}
      className={styles.choice}
      aria-label={label}
      defaultValue={value}
      disabled={pending}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        startTransition(() => chooseDisplay({ [name]: chosen }));
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
