'use client';

import { unstable_rethrow } from 'next/navigation';
import { useRef, useState, useTransition } from 'react';
import { useHydrated } from '@/app/_ui/hydrated';
import ui from '@/app/_ui/ui.module.css';
import { useWarning } from '@/app/_ui/warn-before-leaving';
import type { FieldFault } from '@/app/questions/draft-answer';
import { EditorProvider, type EditorWords } from '@/app/questions/editor/editor-context';
import { FaultText, Typed, TypedLong } from '@/app/questions/editor/fields';
import type messages from '@/content/messages/en.json';
import { type ProfileAnswer, saveProfile } from '../actions';
import styles from '../profiles.module.css';
import type { ProfileDraft } from './draft';
import { HandsOnRows, TopicRows } from './profile-rows';

export type ProfileWords = (typeof messages)['profiles']['editor'];

/** Changes a role profile. Nothing that was typed is lost to a fault or a lost answer. */
export function ProfileEditor({
  profileId,
  version,
  first,
  topics,
  words,
  fieldWords,
}: {
  profileId: string;
  version: number;
  first: ProfileDraft;
  topics: readonly { value: string; label: string }[];
  words: ProfileWords;
  fieldWords: EditorWords;
}) {
  const [draft, setDraft] = useState(first);
  const [at, setAt] = useState(version);
  const [isKept, setKept] = useState(true);
  const [wrong, setWrong] = useState<readonly FieldFault[]>([]);
  const [error, setError] = useState<string>();
  const [said, setSaid] = useState<string>();
  const [pending, startTransition] = useTransition();
  const form = useRef<HTMLFormElement>(null);
  const hydrated = useHydrated();
  useWarning(!isKept);

  function change(changes: Partial<ProfileDraft>) {
    setDraft((before) => ({ ...before, ...changes }));
    setKept(false);
    setSaid(undefined);
  }

  function save(event: React.FormEvent) {
    event.preventDefault();
    if (pending) return;
    const sent = new FormData();
    sent.set('profileId', profileId);
    sent.set('version', String(at));
    sent.set('profile', JSON.stringify(draft));
    startTransition(async () => {
      try {
        take(await saveProfile(sent));
      } catch (thrown) {
        unstable_rethrow(thrown);
        setError(fieldWords.failed);
      }
    });
  }

  function take(answer: ProfileAnswer) {
    setError('error' in answer ? answer.error : undefined);
    if ('error' in answer) {
      setWrong(answer.faults ?? []);
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
      return;
    }
    setWrong([]);
    setKept(true);
    setAt(answer.saved);
    setSaid(words.saved);
  }

  const text = (field: 'name' | 'about') => ({
    label: words[field],
    at: field,
    value: draft[field],
    onChange: (value: string) => change({ [field]: value }),
  });
  const numeric = (field: NumberField) => (
    <Typed
      key={field}
      numeric
      label={words[field]}
      rule={words[`${field}Rule`]}
      at={field}
      value={draft[field]}
      most={8}
      onChange={(value) => change({ [field]: value })}
    />
  );
  return (
    <form
      ref={form}
      className={`${ui.panel} ${ui.stack} ${styles.editor}`}
      onSubmit={save}
      aria-busy={pending}
      aria-label={words.title}
    >
      <EditorProvider value={{ words: fieldWords, faultAt: (place) => wrong.find((one) => one.at === place)?.text }}>
        <Typed {...text('name')} most={80} />
        <TypedLong {...text('about')} rows={2} />
        <TopicRows rows={draft.topics} topics={topics} words={words} onChange={(rows) => change({ topics: rows })} />
        <FaultText at="topics" />
        <fieldset className={styles.numbers}>
          <legend className={styles.legend}>{words.numbers}</legend>
          {numberFields.map(numeric)}
        </fieldset>
        <HandsOnRows
          rows={draft.handsOn}
          topics={topics}
          words={words}
          onChange={(rows) => change({ handsOn: rows })}
        />
        <FaultText at="handsOn" />
      </EditorProvider>
      <div>
        <div role="alert">{error && <p className={ui.alert}>{error}</p>}</div>
        <div role="status">{said && <p className={ui.notice}>{said}</p>}</div>
      </div>
      <button type="submit" className={ui.primary} disabled={!hydrated} aria-disabled={pending}>
        {words.save}
      </button>
    </form>
  );
}

const numberFields = [
  'refuse',
  'minimum',
  'maximum',
  'clean',
  'atLeast',
  'recentDays',
  'validMonths',
  'minutes',
] as const;
type NumberField = (typeof numberFields)[number];
