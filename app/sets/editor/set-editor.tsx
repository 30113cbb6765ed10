'use client';

import { unstable_rethrow } from 'next/navigation';
import { useEffect, useRef, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import { newKey } from '@/app/_ui/new-key';
import ui from '@/app/_ui/ui.module.css';
import { useWarning } from '@/app/_ui/warn-before-leaving';
import type { FieldFault } from '@/app/questions/draft-answer';
import { EditorProvider, type EditorWords } from '@/app/questions/editor/editor-context';
import { Chosen, FaultText, Typed, TypedLong } from '@/app/questions/editor/fields';
import { createSet, lookOverSet, previewTask, saveSet } from '../actions';
import type { SetAnswer } from '../set-answer';
import styles from '../sets.module.css';
import type { Draft, DraftItem } from './draft';
import { ItemList } from './item-list';
import { Preview, type Previewed } from './preview';
import type { SetChoices, SetWords } from './set-words';

/** What a set is looked over after: whoever types goes on typing. */
const PAUSE_MS = 600;

/** Builds a set, with what it is made of and an example of each task beside it. Nothing typed is lost to a fault or a lost answer. */
export function SetEditor({
  first,
  version,
  words,
  fieldWords,
  choices,
  holding,
  never,
}: {
  first: Draft;
  /** None for a set that is not kept yet. */
  version?: { setId: string; versionId: string };
  words: SetWords;
  fieldWords: EditorWords;
  choices: SetChoices;
  /** What the set is made of as it was kept. */
  holding: React.ReactNode;
  never: readonly FieldFault[];
}) {
  const [draft, setDraft] = useState(first);
  const [isKept, setKept] = useState(true);
  const [wrong, setWrong] = useState<readonly FieldFault[]>([]);
  const [error, setError] = useState<string>();
  const [said, setSaid] = useState<string>();
  const [looked, setLooked] = useState<{ holding: React.ReactNode; never: readonly FieldFault[] }>({ holding, never });
  const [previewed, setPreviewed] = useState<Previewed>();
  const [pending, startTransition] = useTransition();
  const key = useRef<string>(undefined);
  const form = useRef<HTMLFormElement>(null);
  const hydrated = useHydrated();
  useWarning(!isKept);
  useLookingOver(draft, first, (answer) => setLooked({ holding: answer.holding, never: answer.faults }));

  function change(changes: Partial<Draft>) {
    setDraft((before) => ({ ...before, ...changes }));
    setKept(false);
    setSaid(undefined);
  }

  function run(send: (form: FormData) => Promise<SetAnswer>, fields: Readonly<Record<string, string>>) {
    if (pending) return;
    const sent = new FormData();
    for (const [name, value] of Object.entries(fields)) sent.set(name, value);
    startTransition(async () => {
      try {
        take(await send(sent));
      } catch (thrown) {
        unstable_rethrow(thrown);
        setError(fieldWords.failed);
      }
    });
  }

  function take(answer: SetAnswer) {
    setError('error' in answer ? answer.error : undefined);
    if ('error' in answer) {
      setKept(false);
      setWrong(answer.faults ?? []);
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
    }
    if ('shown' in answer)
      setPreviewed((before) => before && { ...before, shown: answer.shown, count: before.count + 1 });
    if ('saved' in answer) {
      setWrong([]);
      setKept(true);
      setSaid(fieldWords.saved);
    }
  }

  function keep(event: React.FormEvent) {
    event.preventDefault();
    const set = JSON.stringify(draft);
    if (version) return run(saveSet, { ...version, set });
    key.current ??= newKey();
    // Leaving the page is what comes of it.
    setKept(true);
    run(createSet, { key: key.current, set });
  }

  function show(item: DraftItem, asked: { seed: number; answers: boolean }, opens = false) {
    if (pending) return;
    setPreviewed((before) => ({
      item,
      ...asked,
      shown: opens ? undefined : before?.shown,
      count: before?.count ?? 0,
      opened: (before?.opened ?? 0) + Number(opens),
    }));
    run(previewTask, {
      item: JSON.stringify(item),
      seed: String(asked.seed),
      ...(asked.answers && { answers: 'yes' }),
    });
  }

  const faults = [...wrong, ...looked.never];
  const faultAt = (at: string) => faults.find((fault) => fault.at === at)?.text;
  return (
    <div className={styles.beside}>
      <form ref={form} className={`${ui.panel} ${ui.stack}`} onSubmit={keep} aria-busy={pending}>
        <EditorProvider value={{ words: fieldWords, faultAt }}>
          <Typed
            label={words.title}
            at="title"
            value={draft.title}
            most={120}
            onChange={(title) => change({ title })}
          />
          <TypedLong
            label={words.note}
            rule={words.noteRule}
            at="note"
            rows={3}
            value={draft.note}
            onChange={(note) => change({ note })}
          />
          <Chosen
            label={words.blueprint}
            at="blueprint"
            value={draft.blueprint}
            options={[{ value: '', label: words.noBlueprint }, ...choices.blueprints]}
            onChange={(blueprint) => change({ blueprint })}
          />
          <ItemList
            items={draft.items}
            words={words}
            choices={choices}
            faults={faults}
            onChange={(items) => change({ items })}
            onPreview={(item) => show(item, { seed: 0, answers: false }, true)}
          />
          <FaultText at="items" />
        </EditorProvider>
        <div>
          <div role="alert">{error && <p className={ui.alert}>{error}</p>}</div>
          <div role="status">{said && <p className={ui.notice}>{said}</p>}</div>
        </div>
        <button type="submit" className={ui.primary} disabled={!hydrated} aria-disabled={pending}>
          {version ? words.save : words.create}
        </button>
      </form>
      <div className={`${ui.stack} ${styles.aside}`}>
        <section className={`${ui.panel} ${ui.stack}`} aria-labelledby="holding">
          <h2 id="holding">{words.holding}</h2>
          {looked.holding}
        </section>
        <Preview
          previewed={previewed}
          items={draft.items}
          words={words}
          failed={fieldWords.failed}
          pending={pending}
          onShow={show}
        />
      </div>
    </div>
  );
}

/** Has a draft looked over when whoever changes it pauses. Where no answer comes, what was said before stays. */
function useLookingOver(
  draft: Draft,
  first: Draft,
  take: (answer: Extract<SetAnswer, { holding: React.ReactNode }>) => void,
): void {
  const taking = useRef(take);
  useEffect(() => {
    taking.current = take;
  });
  useEffect(() => {
    if (draft === first) return;
    let isOver = false;
    const timer = setTimeout(async () => {
      const sent = new FormData();
      sent.set('set', JSON.stringify(draft));
      const answer = await lookOverSet(sent).catch(() => undefined);
      if (!isOver && answer && 'holding' in answer) taking.current(answer);
    }, PAUSE_MS);
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [draft, first]);
}
