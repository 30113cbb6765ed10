'use client';

import { unstable_rethrow } from 'next/navigation';
import { createContext, type FormEvent, useContext, useEffect, useRef, useState, useTransition } from 'react';
import type { GivenResult } from '@/app/_server/assignments/given-result';
import { useHydrated } from '@/app/_ui/hydrated';
import { newKey } from '@/app/_ui/new-key';
import ui from '@/app/_ui/ui.module.css';

/** What is wrong with the fields of the form around, each by its name. */
const WrongFields = createContext<Readonly<Record<string, string>>>({});

/** A form that says what is wrong at the field itself, goes to the first such field and keeps everything typed. */
export function FieldForm({
  action,
  submit,
  failed,
  wrongTitle,
  done,
  quiet = false,
  children,
}: {
  action: (form: FormData) => Promise<GivenResult>;
  submit: string;
  /** Said when no answer came. */
  failed: string;
  /** Said above the button when something is wrong further up. */
  wrongTitle: string;
  done?: string;
  quiet?: boolean;
  children: React.ReactNode;
}) {
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  const [error, setError] = useState<string>();
  const [said, setSaid] = useState<string>();
  const [pending, startTransition] = useTransition();
  const key = useRef<string>(undefined);
  const ref = useRef<HTMLFormElement>(null);
  const hydrated = useHydrated();

  useEffect(() => {
    if (Object.keys(wrong).length > 0)
      ref.current?.querySelector<HTMLElement>('[aria-invalid="true"], [data-wrong="true"] input')?.focus();
  }, [wrong]);

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    key.current ??= newKey();
    const form = new FormData(event.currentTarget);
    form.set('key', key.current);
    setSaid(undefined);
    startTransition(async () => {
      try {
        const result = await action(form);
        setWrong('wrong' in result ? result.wrong : {});
        setError('error' in result ? result.error : 'wrong' in result ? wrongTitle : undefined);
        if ('done' in result) {
          key.current = undefined;
          setSaid(done);
        }
      } catch (thrown) {
        unstable_rethrow(thrown);
        setError(failed);
      }
    });
  }

  return (
    <form ref={ref} className={ui.stack} onSubmit={send} aria-busy={pending} noValidate>
      <WrongFields value={wrong}>{children}</WrongFields>
      <div role="alert">{error && <p className={ui.alert}>{error}</p>}</div>
      {done && <div role="status">{said && <p className={ui.notice}>{said}</p>}</div>}
      <div>
        <button type="submit" className={quiet ? undefined : ui.primary} disabled={!hydrated} aria-disabled={pending}>
          {submit}
        </button>
      </div>
    </form>
  );
}

/** What is wrong with a field; undefined where nothing is. */
export function useWrong(name: string): string | undefined {
  return useContext(WrongFields)[name];
}
