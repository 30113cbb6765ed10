'use client';

import { useTransition } from 'react';
import { signOut } from '@/app/_ui/session-actions';
import { useHydrated } from './hydrated';
import styles from './site-header.module.css';

/** Leaves, from every page. */
export function SignOut({ label }: { label: string }) {
  const [pending, startTransition] = useTransition();
  const hydrated = useHydrated();
  return (
    <button
      type="button"
      className={styles.leave}
      disabled={!hydrated}
      aria-disabled={pending}
      onClick={() =>
        startTransition(async () => {
          await signOut({});
        })
      }
    >
      {label}
    </button>
  );
}
