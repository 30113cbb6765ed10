'use client';

import { type FormEvent, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import { type CheckResult, checkCertificate } from './actions';
import { CertificateShown, type ShownWords } from './certificate-shown';

/** Takes a certificate and says what it is worth. */
export function CheckForm({
  children,
  submit,
  failed,
  words,
}: {
  children: React.ReactNode;
  submit: string;
  /** Said when no answer came. */
  failed: string;
  words: ShownWords;
}) {
  const [result, setResult] = useState<CheckResult>();
  const [pending, startTransition] = useTransition();
  const hydrated = useHydrated();

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    startTransition(async () => setResult(await checkCertificate(form).catch(() => ({ error: failed }))));
  }

  return (
    <>
      <form className={ui.stack} onSubmit={send} aria-busy={pending}>
        {children}
        <button type="submit" className={ui.primary} disabled={!hydrated} aria-disabled={pending}>
          {submit}
        </button>
      </form>
      <div role="alert">{result && 'error' in result && <p className={ui.alert}>{result.error}</p>}</div>
      <div role="status">{result && 'view' in result && <CertificateShown view={result.view} words={words} />}</div>
    </>
  );
}
