'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useCallback, useEffect, useRef, useState } from 'react';
import type { ActResult } from '@/app/_ui/act-result';
import { useHydrated } from '@/app/_ui/hydrated';
import { newKey } from '@/app/_ui/new-key';
import ui from '@/app/_ui/ui.module.css';

interface SavingWords {
  submit: string;
  saving: string;
  saved: string;
  notSaved: string;
}

/** How long somebody may still be choosing or typing, ms. */
const PAUSE = 700;
/** How long to wait before another try, ms: longer each time. */
const AGAIN = [1000, 2000, 4000, 8000];

/**
 * A form whose answer is saved as it changes, and again until the server has it. What is chosen stays in the form whatever
 * happens to the connection.
 */
export function SavingForm({
  action,
  words,
  className,
  children,
}: {
  action: (form: FormData) => Promise<ActResult>;
  words: SavingWords;
  className?: string | undefined;
  children: React.ReactNode;
}) {
  const form = useRef<HTMLFormElement>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  // Counts changes, so that an answer to an earlier one says nothing of the last.
  const latest = useRef(0);
  // One key for one change: a retry of it finds the answer already saved.
  const key = useRef('');
  const [state, setState] = useState<{ is: 'still' | 'saving' | 'saved' | 'lost' } | { is: 'refused'; error: string }>({
    is: 'still',
  });
  const hydrated = useHydrated();
  const router = useRouter();

  const save = useCallback(
    async (change: number, tries: number, asked: boolean) => {
      if (!form.current || change !== latest.current) return;
      const sent = new FormData(form.current);
      sent.set('key', key.current);
      setState({ is: 'saving' });
      try {
        const result = await action(sent);
        if (change !== latest.current) return;
        // Half an answer is not worth a complaint while somebody is still at it.
        if ('error' in result) setState(asked ? { is: 'refused', error: result.error } : { is: 'still' });
        else {
          setState({ is: 'saved' });
          router.refresh();
        }
      } catch {
        if (change !== latest.current) return;
        setState({ is: 'lost' });
        timer.current = setTimeout(() => save(change, tries + 1, asked), AGAIN[Math.min(tries, AGAIN.length - 1)]);
      }
    },
    [action, router],
  );

  function changed(pause: number, asked: boolean) {
    clearTimeout(timer.current);
    const change = ++latest.current;
    key.current = newKey();
    timer.current = setTimeout(() => save(change, 0, asked), pause);
  }

  useEffect(() => () => clearTimeout(timer.current), []);

  return (
    <form
      ref={form}
      className={className}
      onChange={() => changed(PAUSE, false)}
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        changed(0, true);
      }}
      aria-busy={state.is === 'saving'}
    >
      {children}
      <div role="alert">{state.is === 'refused' && <p className={ui.alert}>{state.error}</p>}</div>
      <p role="status" className={ui.small}>
        {state.is === 'saving' && words.saving}
        {state.is === 'saved' && words.saved}
        {state.is === 'lost' && words.notSaved}
      </p>
      <button type="submit" className={ui.primary} disabled={!hydrated}>
        {words.submit}
      </button>
    </form>
  );
}
