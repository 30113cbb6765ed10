'use client';

import { Chosen, Typed, TypedLong } from '@/app/questions/editor/fields';
import styles from '../profiles.module.css';
import { type HandsOnDraft, newRowId, type TopicDraft } from './draft';
import type { ProfileWords } from './profile-editor';

interface Rows<T> {
  rows: readonly T[];
  topics: readonly { value: string; label: string }[];
  words: ProfileWords;
  onChange: (rows: readonly T[]) => void;
}

/** The topics that have to be shown, each with its line and how sure one has to be. */
export function TopicRows(props: Rows<TopicDraft>) {
  const { topics, words } = props;
  return (
    <List
      {...props}
      legend={words.topics}
      add={words.addTopic}
      empty={(id) => ({ id, topic: '', cut: '0', confidence: '0.9' })}
    >
      {(row, change) => (
        <>
          <TopicChoice at={`topics.${row.id}.topic`} row={row} topics={topics} words={words} change={change} />
          {(['cut', 'confidence'] as const).map((field) => (
            <Typed
              key={field}
              numeric
              label={words[field]}
              at={`topics.${row.id}.${field}`}
              value={row[field]}
              most={8}
              onChange={(value) => change({ [field]: value })}
            />
          ))}
        </>
      )}
    </List>
  );
}

/** What has to be seen done with somebody's own hands. */
export function HandsOnRows(props: Rows<HandsOnDraft>) {
  const { topics, words } = props;
  return (
    <List
      {...props}
      legend={words.handsOn}
      add={words.addHandsOn}
      empty={(id) => ({ id, topic: '', text: '', outOf: '3', pass: '2' })}
    >
      {(row, change) => (
        <>
          <div className={styles.whole}>
            <TypedLong
              label={words.text}
              at={`handsOn.${row.id}.text`}
              rows={2}
              value={row.text}
              onChange={(text) => change({ text })}
            />
          </div>
          <TopicChoice at={`handsOn.${row.id}.topic`} row={row} topics={topics} words={words} change={change} />
          {(['outOf', 'pass'] as const).map((field) => (
            <Typed
              key={field}
              numeric
              label={words[field]}
              at={`handsOn.${row.id}.${field}`}
              value={row[field]}
              most={2}
              onChange={(value) => change({ [field]: value })}
            />
          ))}
        </>
      )}
    </List>
  );
}

function TopicChoice({
  at,
  row,
  topics,
  words,
  change,
}: Pick<Rows<never>, 'topics' | 'words'> & {
  at: string;
  row: { topic: string };
  change: (changes: { topic: string }) => void;
}) {
  return (
    <div className={styles.topic}>
      <Chosen
        label={words.topic}
        at={at}
        value={row.topic}
        options={[{ value: '', label: words.choose }, ...topics]}
        onChange={(topic) => change({ topic })}
      />
    </div>
  );
}

function List<T extends { id: string }>({
  rows,
  words,
  onChange,
  legend,
  add,
  empty,
  children,
}: Rows<T> & {
  legend: string;
  add: string;
  empty: (id: string) => T;
  children: (row: T, change: (changes: Partial<T>) => void) => React.ReactNode;
}) {
  return (
    <fieldset className={styles.rows}>
      <legend className={styles.legend}>{legend}</legend>
      {rows.map((row, index) => (
        <div key={row.id} className={styles.row}>
          {children(row, (changes) => onChange(rows.map((one) => (one === row ? { ...one, ...changes } : one))))}
          <button
            type="button"
            aria-label={words.removeRow.replace('{number}', String(index + 1)).replace('{list}', legend)}
            onClick={() => onChange(rows.filter((one) => one !== row))}
          >
            {words.remove}
          </button>
        </div>
      ))}
      <button type="button" className={styles.add} onClick={() => onChange([...rows, empty(newRowId(rows))])}>
        {add}
      </button>
    </fieldset>
  );
}
