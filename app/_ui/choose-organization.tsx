'use client';

import { useTransition } from 'react';
import { enterOrganization } from './session-actions';
import styles from './site-header.module.css';

/** Which organisation to work in, for whoever is in several. */
export function ChooseOrganization({
  label,
  value,
  options,
}: {
  label: string;
  value: string | undefined;
  options: readonly { value: string; label: string }[];
}) {
  const [, startTransition] = useTransition();
  return (
    <select
      className={styles.choice}
      aria-label={label}
      value={value}
      onChange={(event) => {
        const organizationId = event.currentTarget.value;
        startTransition(async () => {
          await enterOrganization({ organizationId });
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
