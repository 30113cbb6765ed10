'use client';

import { type FormEvent, useEffect, useEffectEvent, useRef, useState } from 'react';
import type { ActResult } from '@/app/_ui/act-result';
import { useHydrated } from '@/app/_ui/hydrated';
import { newKey } from '@/app/_ui/new-key';
import ui from '@/app/_ui/ui.module.css';
import { Saver, type Saving } from './saver';

interface SavingWords {
  submit: string;
  saving: string;
  saved: string;
  notSaved: string;
}

const PAUSE = 700;
const AGAIN = [1000, 2000, 4000, 8000];

/** Whatever may change a field: some are set by scripts, which tell of it in no event of their own. */
const CHANGES = ['input', 'change', 'click', 'keyup', 'pointerup'] as const;

/**
 * A form whose answer is saved as it changes, and again until the server has it. What is chosen stays in the form whatever
 * happens to the connection, and nobody leaves it unsaved without being told.
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
  const saver = useRef<Saver>(undefined);
  const [saving, tell] = useState<Saving>({ is: 'still' });
  const hydrated = useHydrated();
  // A refresh of the page may bring another function for the same action; what is unsaved has to outlive that.
  const sendNow = useEffectEvent(action);

  useEffect(() => {
    const element = form.current;
    if (!element) return;
    const read = () => new FormData(element);
    const send = (filled: FormData) => sendNow(filled);
    const made = new Saver({ has: cameWith(element), read, send, tell, newKey, pause: PAUSE, again: AGAIN });
    saver.current = made;
    made.look();
    // Behind the event, once what it changes has been drawn.
    const look = () => setTimeout(() => made.look(), 50);
    for (const type of CHANGES) element.addEventListener(type, look);
    const stopGuarding = guard(element, made);
    return () => {
      for (const type of CHANGES) element.removeEventListener(type, look);
      stopGuarding();
      made.stop();
    };
  }, []);

  function send(event: FormEvent) {
    event.preventDefault();
    void saver.current?.save(true);
  }

  return (
    <form ref={form} className={className} onSubmit={send} aria-busy={saving.is === 'saving'}>
      {children}
      <div role="alert">{saving.is === 'refused' && saving.asked && <p className={ui.alert}>{saving.error}</p>}</div>
      <p role="status" className={ui.small}>
        {saving.is === 'saving' && words.saving}
        {saving.is === 'saved' && words.saved}
        {saving.is === 'lost' && words.notSaved}
        {saving.is === 'refused' && !saving.asked && saving.error}
      </p>
      <button type="submit" className={ui.primary} disabled={!hydrated}>
        {words.submit}
      </button>
    </form>
  );
}

/** What the server wrote into a form: somebody may have chosen before the page's scripts were there. */
function cameWith(form: HTMLFormElement): FormData {
  const fresh = form.cloneNode(true) as HTMLFormElement;
  fresh.reset();
  return new FormData(fresh);
}

/** Saves before a link or a button elsewhere leads away; what cannot be saved as it is may be left with a second press. */
function guard(form: HTMLFormElement, saver: Saver): () => void {
  let told = false;
  const leave = (event: MouseEvent) => {
    const way = event.target instanceof Element ? event.target.closest<HTMLElement>('a[href], button') : null;
    if (!way || form.contains(way) || !saver.isUnsaved || told) {
      told = false;
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    void saver.save(true).then((came) => {
      told = came === 'refused';
      if (came === 'saved') way.click();
    });
  };
  const unload = (event: BeforeUnloadEvent) => {
    if (saver.isUnsaved) event.preventDefault();
  };
  window.addEventListener('click', leave, true);
  window.addEventListener('beforeunload', unload);
  return () => {
    window.removeEventListener('click', leave, true);
    window.removeEventListener('beforeunload', unload);
  };
}
