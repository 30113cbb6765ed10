'use client';

import { Chosen, FaultText, Typed } from '@/app/questions/editor/fields';
import styles from '../sets.module.css';
import type { DraftItem, DraftOf } from './draft';
import type { Choice, SetChoices, SetWords } from './set-words';

interface Fields<K extends DraftItem['kind'] = DraftItem['kind']> {
  item: DraftOf<K>;
  words: SetWords;
  choices: SetChoices;
  onChange: (item: DraftItem) => void;
}

/** What can be said of an item. */
export function ItemFields({ item, ...rest }: Fields) {
  const { words, choices, onChange } = rest;
  switch (item.kind) {
    case 'case':
      return (
        <Typed
          code
          label={words.code}
          rule={words.codeRule}
          at={`items.${item.id}.code`}
          value={item.code}
          most={40}
          onChange={(code) => onChange({ ...item, code })}
        />
      );
    case 'written':
      return (
        <Chosen
          label={words.question}
          rule={words.questionRule}
          at={`items.${item.id}.questionId`}
          value={item.questionId}
          options={[{ value: '', label: words.choose }, ...kept(choices.written, item.questionId, words)]}
          onChange={(questionId) => onChange({ ...item, questionId })}
        />
      );
    case 'questions':
      return <QuestionsFields item={item} {...rest} />;
    case 'cases':
      return <CasesFields item={item} {...rest} />;
  }
}

/** The choices, with one that was chosen before and is not offered any more. */
function kept(choices: readonly Choice[], value: string, words: SetWords): readonly Choice[] {
  const isThere = value === '' || choices.some((one) => one.value === value);
  return isThere ? choices : [...choices, { value, label: words.gone }];
}

function QuestionsFields({ item, words, choices, onChange }: Fields<'questions'>) {
  const at = (field: string) => `items.${item.id}.${field}`;
  const offered = choices.kinds.filter(
    ({ value, topics }) => item.topic === '' || topics.includes(item.topic) || value === item.questionKind,
  );
  return (
    <div className={styles.fields}>
      <Typed
        numeric
        label={words.count}
        at={at('count')}
        value={item.count}
        most={3}
        onChange={(count) => onChange({ ...item, count })}
      />
      <Chosen
        label={words.topic}
        at={at('topic')}
        value={item.topic}
        options={[{ value: '', label: words.choose }, ...choices.topics]}
        onChange={(topic) => onChange({ ...item, topic })}
      />
      <Chosen
        label={words.kind}
        at={at('questionKind')}
        value={item.questionKind}
        options={[{ value: '', label: words.anyKind }, ...offered]}
        onChange={(value) => {
          const kind = choices.kinds.find((one) => one.value === value);
          onChange({ ...item, questionKind: kind?.value ?? '' });
        }}
      />
    </div>
  );
}

function CasesFields({ item, words, choices, onChange }: Fields<'cases'>) {
  const at = (field: string) => `items.${item.id}.${field}`;
  return (
    <>
      <div className={styles.fields}>
        <Typed
          numeric
          label={words.count}
          at={at('count')}
          value={item.count}
          most={3}
          onChange={(count) => onChange({ ...item, count })}
        />
        <Typed
          numeric
          label={words.from}
          at={at('from')}
          value={item.from}
          most={6}
          onChange={(from) => onChange({ ...item, from })}
        />
        <Typed
          numeric
          label={words.to}
          at={at('to')}
          value={item.to}
          most={6}
          onChange={(to) => onChange({ ...item, to })}
        />
        <Typed
          numeric
          label={words.minutes}
          at={at('minutes')}
          value={item.minutes}
          most={4}
          onChange={(minutes) => onChange({ ...item, minutes })}
        />
        <Chosen
          label={words.level}
          at={at('hardest')}
          value={item.hardest ? 'hardest' : ''}
          options={[
            { value: '', label: words.usual },
            { value: 'hardest', label: words.hardest },
          ]}
          onChange={(value) => onChange({ ...item, hardest: value === 'hardest' })}
        />
        <Chosen
          label={words.howMany}
          at={at('faults')}
          value={item.faults}
          options={[
            { value: '', label: words.eitherFaults },
            { value: 'single', label: words.faults.single },
            { value: 'double', label: words.faults.double },
          ]}
          onChange={(value) => onChange({ ...item, faults: value === 'single' || value === 'double' ? value : '' })}
        />
      </div>
      <Ticks
        legend={words.topics}
        at={at('topics')}
        choices={choices.topics}
        chosen={item.topics}
        onChange={(topics) => onChange({ ...item, topics })}
      />
      <Ticks
        legend={words.rigs}
        at={at('rigs')}
        choices={choices.rigs}
        chosen={item.rigs}
        onChange={(rigs) => onChange({ ...item, rigs })}
      />
    </>
  );
}

/** Any number of a list; none leaves it open. */
function Ticks({
  legend,
  at,
  choices,
  chosen,
  onChange,
}: {
  legend: string;
  at: string;
  choices: readonly Choice[];
  chosen: readonly string[];
  onChange: (chosen: readonly string[]) => void;
}) {
  return (
    <fieldset>
      <legend className={styles.legend}>{legend}</legend>
      <FaultText at={at} />
      <div className={styles.ticks}>
        {choices.map(({ value, label }) => (
          <label key={value} className={styles.tick}>
            <input
              type="checkbox"
              checked={chosen.includes(value)}
              onChange={(event) =>
                onChange(event.currentTarget.checked ? [...chosen, value] : chosen.filter((one) => one !== value))
              }
            />
            {label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
