'use client';

import { unstable_rethrow } from 'next/navigation';
import { type ChangeEvent, type FormEvent, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import { importPeople, previewImport } from './actions';
import type { ImportAnswer } from './import-answer';

interface Words {
  file: string;
  paste: string;
  preview: string;
  failed: string;
}

/** A list goes in as a file or pasted, is looked at, and comes in. What was pasted stays until it is in. */
export function ImportForm({ words }: { words: Words }) {
  const [csv, setCsv] = useState('');
  const [answer, setAnswer] = useState<ImportAnswer>();
  const [pending, startTransition] = useTransition();
  const hydrated = useHydrated();

  async function take({ currentTarget: { files } }: ChangeEvent<HTMLInputElement>) {
    const [file] = files ?? [];
    if (file) setCsv(await file.text());
    setAnswer(undefined);
  }

  function send(event: FormEvent<HTMLFormElement>, to: typeof previewImport) {
    event.preventDefault();
    // A second press would find everybody taken, and put that in the place of their PINs.
    if (pending) return;
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
      <form className={ui.stack} onSubmit={(event) => send(event, previewImport)} aria-busy={pending}>
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
