'use client';

import { unstable_rethrow } from 'next/navigation';
import { type ChangeEvent, type FormEvent, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import styles from '../people.module.css';
import { importPeople, previewImport } from './actions';
import type { ImportAnswer } from './import-answer';
import { isTooBig, MOST_BYTES, textOf } from './read-list';

interface Words {
  file: string;
  paste: string;
  preview: string;
  failed: string;
  tooBig: string;
  wait: string;
}

/** A list goes in as a file or pasted, is looked at, and comes in. What was pasted stays until it is in. */
export function ImportForm({ words }: { words: Words }) {
  const [csv, setCsv] = useState('');
  const [answer, setAnswer] = useState<ImportAnswer>();
  const [pending, startTransition] = useTransition();
  const hydrated = useHydrated();

  async function take({ currentTarget: { files } }: ChangeEvent<HTMLInputElement>) {
    const [file] = files ?? [];
    if (!file) return;
    const text = file.size > MOST_BYTES ? undefined : textOf(new Uint8Array(await file.arrayBuffer()));
    if (text !== undefined) setCsv(text);
    setAnswer(text === undefined ? { error: words.tooBig } : undefined);
  }

  function send(event: FormEvent<HTMLFormElement>, to: typeof previewImport) {
    event.preventDefault();
    // A second press would find everybody taken, and put that in the place of their PINs.
    if (pending) return;
    if (isTooBig(csv)) return setAnswer({ error: words.tooBig });
    const form = new FormData(event.currentTarget);
    form.set('csv', csv);
    startTransition(async () => {
      try {
        const answered = await to(form);
        setAnswer(answered);
        if (to === importPeople && !('error' in answered)) setCsv('');
      } catch (thrown) {
        unstable_rethrow(thrown);
        setAnswer({ error: words.failed });
      }
    });
  }

  return (
    <>
      <form
        className={`${ui.stack} ${styles.onScreen}`}
        onSubmit={(event) => send(event, previewImport)}
        aria-busy={pending}
      >
        <label className={ui.field}>
          <span>{words.file}</span>
          <input type="file" accept=".csv,text/csv,text/plain" onChange={take} disabled={!hydrated} />
        </label>
        <label className={ui.field}>
          <span>{words.paste}</span>
          <textarea
            className={ui.code}
            rows={8}
            value={csv}
            onChange={(event) => {
              setCsv(event.currentTarget.value);
              setAnswer(undefined);
            }}
            spellCheck={false}
          />
        </label>
        <button type="submit" disabled={!hydrated} aria-disabled={pending}>
          {words.preview}
        </button>
      </form>
      <div role="alert">{answer && 'error' in answer && <p className={ui.alert}>{answer.error}</p>}</div>
      <div role="status">{pending && <p className={ui.small}>{words.wait}</p>}</div>
      {answer && 'shown' in answer && answer.shown}
      {answer && 'submit' in answer && answer.submit && (
        <form onSubmit={(event) => send(event, importPeople)} aria-busy={pending}>
          <input type="hidden" name="good" value={answer.good} />
          <button type="submit" className={ui.primary} aria-disabled={pending}>
            {answer.submit}
          </button>
        </form>
      )}
    </>
  );
}
