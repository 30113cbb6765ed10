'use client';

import { unstable_rethrow } from 'next/navigation';
import { type FormEvent, useRef, useState, useTransition } from 'react';
import type { ActResult } from './act-result';
import { useHydrated } from './hydrated';
import { newKey } from './new-key';
import { ToCopy } from './to-copy';
import ui from './ui.module.css';

/**
 * A form whose act is made once. The key stays the same until the act is stored, so that a double click, a retry after
 * a lost answer or a second try find the act already made. What was typed stays when something was wrong.
 */
export function ActForm({
  action,
  submit,
  failed,
  done,
  clears = false,
  quiet = false,
  className,
  children,
}: {
  action: (form: FormData) => Promise<ActResult>;
  submit: string;
  /** Said when no answer came. */
  failed: string;
  /** Said once it is done, where the page itself would not show it. */
  done?: string;
  /** Nothing that was typed stays once it is done. */
  clears?: boolean;
  /** Not the main thing to do on its panel. */
  quiet?: boolean;
  className?: string | undefined;
  children: React.ReactNode;
}) {
  const [error, setError] = useState<string>();
  const [said, setSaid] = useState<string>();
  const [toCopy, setToCopy] = useState<string>();
  const [pending, startTransition] = useTransition();
  const key = useRef<string>(undefined);
  const hydrated = useHydrated();

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    key.current ??= newKey();
    const { currentTarget } = event;
    const form = new FormData(currentTarget);
    form.set('key', key.current);
    setSaid(undefined);
    setToCopy(undefined);
    startTransition(async () => {
      try {
        const result = await action(form);
        if ('done' in result) {
          key.current = undefined;
          setSaid(done);
          setToCopy(result.toCopy);
          if (clears) currentTarget.reset();
        }
        setError('error' in result ? result.error : undefined);
      } catch (thrown) {
        unstable_rethrow(thrown);
        setError(failed);
      }
    });
  }

  return (
    <form className={className} onSubmit={send} aria-busy={pending}>
      {children}
      <div role="alert">{error && <p className={ui.alert}>{error}</p>}</div>
      {done && (
        <div role="status">
          {said && (
            <div className={ui.notice}>
              {said}
              {toCopy && <ToCopy text={toCopy} label={done} />}
            </div>
          )}
        </div>
      )}
      <button type="submit" className={quiet ? undefined : ui.primary} disabled={!hydrated} aria-disabled={pending}>
        {submit}
      </button>
    </form>
  );
}
