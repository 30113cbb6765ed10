'use client';

import Link from 'next/link';
import { type ChangeEvent, type FormEvent, useRef, useState } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import styles from '../questions.module.css';
import type { ImportAnswer } from './import-answer';
import { ImportedRows, type RowWords } from './imported-rows';

export interface ImportWords extends RowWords {
  file: string;
  fileRule: string;
  topic: string;
  topicRule: string;
  preview: string;
  failed: string;
  tooBig: string;
  wait: string;
  toList: string;
}

/** A file goes in, is looked at, and its questions come in as drafts. */
export function ImportForm({
  words,
  topics,
  mostBytes,
}: {
  words: ImportWords;
  topics: readonly { id: string; name: string }[];
  mostBytes: number;
}) {
  const [file, setFile] = useState<File>();
  const [answer, setAnswer] = useState<ImportAnswer>();
  const [pending, setPending] = useState(false);
  const topic = useRef<HTMLSelectElement>(null);
  const hydrated = useHydrated();

  function take({ currentTarget: { files } }: ChangeEvent<HTMLInputElement>) {
    setFile(files?.[0]);
    setAnswer(undefined);
  }

  async function send(event: FormEvent<HTMLFormElement>, to: 'preview' | 'import', good = 0) {
    event.preventDefault();
    // A second press would bring every question in twice.
    if (pending || !file) return;
    if (file.size > mostBytes) return setAnswer({ error: words.tooBig });
    setPending(true);
    const asked = new URLSearchParams({ topic: topic.current?.value ?? '', good: String(good) });
    setAnswer(await post(`/questions/exchange/${to}?${asked}`, file, words.failed));
    setPending(false);
  }

  return (
    <>
      <form className={ui.stack} onSubmit={(event) => send(event, 'preview')} aria-busy={pending}>
        <label className={ui.field}>
          <span>{words.file}</span>
          <input
            type="file"
            accept=".zip,.csv,application/zip,text/csv"
            onChange={take}
            disabled={!hydrated}
            required
          />
        </label>
        <p className={ui.small}>{words.fileRule}</p>
        <label className={ui.field}>
          <span>{words.topic}</span>
          <select ref={topic} name="topic" onChange={() => setAnswer(undefined)}>
            {topics.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <p className={ui.small}>{words.topicRule}</p>
        <button type="submit" disabled={!hydrated} aria-disabled={pending}>
          {words.preview}
        </button>
      </form>
      <div role="alert">{answer && 'error' in answer && <p className={ui.alert}>{answer.error}</p>}</div>
      <div role="status">
        {pending && <p className={ui.small}>{words.wait}</p>}
        {answer && 'summary' in answer && <p>{answer.summary}</p>}
        {answer && 'imported' in answer && (
          <p className={ui.notice}>
            {answer.imported}{' '}
            <Link href="/questions?state=draft" prefetch={false}>
              {words.toList}
            </Link>
          </p>
        )}
      </div>
      {answer && 'rows' in answer && answer.rows.length > 0 && <ImportedRows rows={answer.rows} words={words} />}
      {answer && 'submit' in answer && answer.submit && (
        <form className={styles.acts} onSubmit={(event) => send(event, 'import', answer.good)} aria-busy={pending}>
          <button type="submit" className={ui.primary} aria-disabled={pending}>
            {answer.submit}
          </button>
        </form>
      )}
    </>
  );
}

async function post(address: string, file: File, failed: string): Promise<ImportAnswer> {
  try {
    const answered = await fetch(address, { method: 'POST', body: file });
    return (await answered.json()) as ImportAnswer;
  } catch {
    return { error: failed };
  }
}
