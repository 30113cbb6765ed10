'use client';

import { unstable_rethrow } from 'next/navigation';
import { useRef, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import { newKey } from '@/app/_ui/new-key';
import ui from '@/app/_ui/ui.module.css';
import { useWarning } from '@/app/_ui/warn-before-leaving';
import { createQuestion, previewQuestion, saveQuestion } from '../actions';
import type { DraftAnswer, FieldFault } from '../draft-answer';
import type { Draft } from './draft';
import { DraftFields, type Named } from './draft-fields';
import styles from './editor.module.css';
import { EditorProvider, type EditorWords } from './editor-context';
import type { RigParts } from './point-editor';
import { PreviewBoundary } from './preview-boundary';

interface Version {
  questionId: string;
  versionId: string;
}

/** Writes a question, with what learners see of it beside it. Nothing typed is lost to a fault, or to an answer that does not come. */
export function QuestionEditor({
  first,
  version,
  topics,
  rigs,
  words,
  shown,
}: {
  first: Draft;
  /** None for a question that is not kept yet. */
  version?: Version;
  topics: readonly Named[];
  rigs: readonly RigParts[];
  words: EditorWords;
  /** How the draft looks as it was kept. */
  shown?: React.ReactNode;
}) {
  const [draft, setDraft] = useState(first);
  const [isKept, setKept] = useState(true);
  const [faults, setFaults] = useState<readonly FieldFault[]>([]);
  const [error, setError] = useState<string>();
  const [said, setSaid] = useState<string>();
  const [preview, setPreview] = useState<{ shown: React.ReactNode; count: number }>({ shown, count: 0 });
  const [asked, setAsked] = useState({ seed: 0, answers: false });
  const [pending, startTransition] = useTransition();
  const key = useRef<string>(undefined);
  const form = useRef<HTMLFormElement>(null);
  const hydrated = useHydrated();
  useWarning(!isKept);

  function change(next: Draft) {
    setDraft(next);
    setKept(false);
    setSaid(undefined);
  }

  function run(send: (form: FormData) => Promise<DraftAnswer>, fields: Readonly<Record<string, string>>) {
    if (pending) return;
    const sent = new FormData();
    sent.set('question', JSON.stringify(draft));
    for (const [name, value] of Object.entries(fields)) sent.set(name, value);
    startTransition(async () => {
      try {
        take(await send(sent));
      } catch (thrown) {
        unstable_rethrow(thrown);
        setError(words.failed);
      }
    });
  }

  function take(answer: DraftAnswer) {
    setError('error' in answer ? answer.error : undefined);
    if ('error' in answer) setKept(false);
    setFaults('faults' in answer ? answer.faults : []);
    if ('faults' in answer)
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
    if ('shown' in answer) setPreview(({ count }) => ({ shown: answer.shown, count: count + 1 }));
    if ('saved' in answer) {
      setKept(true);
      setSaid(words.saved);
    }
  }

  function show(next: typeof asked) {
    setAsked(next);
    run(previewQuestion, { seed: String(next.seed), ...(next.answers && { answers: 'yes' }) });
  }

  function keep(event: React.FormEvent) {
    event.preventDefault();
    if (version) return run(saveQuestion, { ...version });
    key.current ??= newKey();
    // Leaving the page is what comes of it.
    setKept(true);
    run(createQuestion, { key: key.current });
  }

  const faultAt = (at: string) => faults.find((fault) => fault.at === at)?.text;
  return (
    <div className={styles.beside}>
      <form ref={form} className={`${ui.panel} ${ui.stack}`} onSubmit={keep} aria-busy={pending}>
        <EditorProvider value={{ words, faultAt }}>
          <DraftFields draft={draft} onChange={change} topics={topics} rigs={rigs} />
        </EditorProvider>
        <div>
          <div role="alert">{error && <p className={ui.alert}>{error}</p>}</div>
          <div role="status">{said && <p className={ui.notice}>{said}</p>}</div>
        </div>
        <div className={styles.keep}>
          <button type="submit" className={ui.primary} disabled={!hydrated} aria-disabled={pending}>
            {version ? words.save : words.create}
          </button>
          {version && (
            <button
              type="button"
              disabled={!hydrated}
              aria-disabled={pending}
              onClick={() => run(saveQuestion, { ...version, send: 'yes' })}
            >
              {words.send}
            </button>
          )}
        </div>
      </form>
      <section className={`${ui.panel} ${ui.stack} ${styles.preview}`} aria-labelledby="preview">
        <h2 id="preview">{words.previewTitle}</h2>
        <div className={styles.previewButtons}>
          <button type="button" disabled={!hydrated} aria-disabled={pending} onClick={() => show(asked)}>
            {words.preview}
          </button>
          <button
            type="button"
            disabled={!hydrated}
            aria-disabled={pending}
            onClick={() => show({ ...asked, seed: asked.seed + 1 })}
          >
            {words.again}
          </button>
          <button
            type="button"
            disabled={!hydrated}
            aria-disabled={pending}
            onClick={() => show({ ...asked, answers: !asked.answers })}
          >
            {asked.answers ? words.hideAnswer : words.showAnswer}
          </button>
        </div>
        {/* What is chosen here goes nowhere. */}
        <form key={preview.count} onSubmit={(event) => event.preventDefault()}>
          <PreviewBoundary failed={<p className={ui.alert}>{words.failed}</p>}>
            {preview.shown ?? <p className={ui.small}>{words.previewNone}</p>}
          </PreviewBoundary>
        </form>
      </section>
    </div>
  );
}
