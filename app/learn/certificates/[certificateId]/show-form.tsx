'use client';

import { type FormEvent, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import styles from '@/app/verify/verify.module.css';
import { type ShowResult, showCertificate } from './actions';

/** Makes a showing, which is too long for one line, and lays it out to be copied. */
export function ShowForm({
  children,
  submit,
  failed,
  made,
  label,
}: {
  children: React.ReactNode;
  submit: string;
  /** Said when no answer came. */
  failed: string;
  made: string;
  label: string;
}) {
  const [result, setResult] = useState<ShowResult>();
  const [pending, startTransition] = useTransition();
  const hydrated = useHydrated();

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    startTransition(async () => setResult(await showCertificate(form).catch(() => ({ error: failed }))));
  }

  return (
    <form className={ui.stack} onSubmit={send} aria-busy={pending}>
      {children}
      <div role="alert">{result && 'error' in result && <p className={ui.alert}>{result.error}</p>}</div>
      <button type="submit" className={ui.primary} disabled={!hydrated} aria-disabled={pending}>
        {submit}
      </button>
      <div role="status">
        {result && 'showing' in result && (
          <label className={ui.field}>
            <span>{made}</span>
            <textarea
              className={styles.text}
              readOnly
              rows={6}
              value={result.showing}
              aria-label={label}
              onFocus={(event) => event.currentTarget.select()}
            />
          </label>
        )}
      </div>
    </form>
  );
}
