'use client';

import { useState } from 'react';
import type { FormChoices } from '@/app/_server/assignments/form-choices';
import type messages from '@/content/messages/en.json';
import styles from '../assignments.module.css';
import { FieldGroup, WrongField, WrongSelect } from '../form-fields';

export type FormWords = (typeof messages)['assignments']['form'];

/** Which set, for whom, and from when to when by whose clock. */
export function WhatAndWhen({ choices, words }: { choices: FormChoices; words: FormWords }) {
  const { sets, classes, people, timeZones, first } = choices;
  const [title, setTitle] = useState(first.title);
  const [zone, setZone] = useState(first.rules.timeZone);

  function chooseSet(id: string) {
    const known = sets.some((set) => set.title === title);
    // A title of their own stays.
    if (title === '' || known) setTitle(sets.find((set) => set.id === id)?.title ?? title);
  }

  return (
    <>
      <FieldGroup legend={words.what}>
        <div className={styles.pair}>
          <WrongSelect
            label={words.set}
            rule={words.setRule}
            name="setId"
            defaultValue={first.setId}
            onChange={({ currentTarget }) => chooseSet(currentTarget.value)}
            options={[
              { value: '', label: words.chooseSet },
              ...sets.map(({ id, title: name, tasks }) => ({
                value: id,
                label: `${name} (${tasks})`,
              })),
            ]}
          />
          <WrongField
            label={words.title}
            rule={words.titleRule}
            name="title"
            value={title}
            maxLength={120}
            autoComplete="off"
            onChange={({ currentTarget }) => setTitle(currentTarget.value)}
          />
        </div>
      </FieldGroup>
      <FieldGroup legend={words.whom} rule={words.whomRule} name="whom">
        {classes.length > 0 && (
          <div className={styles.ticks}>
            {classes.map(({ id, name, timeZone }) => (
              <label key={id} className={styles.tick}>
                <input
                  type="checkbox"
                  name="classIds"
                  value={id}
                  defaultChecked={first.classIds.includes(id)}
                  onChange={({ currentTarget }) => currentTarget.checked && setZone(timeZone)}
                />
                <span>{name}</span>
              </label>
            ))}
          </div>
        )}
        <details open={first.personIds.length > 0 || classes.length === 0}>
          <summary className={styles.summary}>{words.people}</summary>
          <div className={styles.ticks}>
            {people.map(({ id, name }) => (
              <label key={id} className={styles.tick}>
                <input type="checkbox" name="personIds" value={id} defaultChecked={first.personIds.includes(id)} />
                <span>{name}</span>
              </label>
            ))}
          </div>
        </details>
      </FieldGroup>
      <FieldGroup legend={words.when}>
        <div className={styles.pair}>
          <WrongField label={words.opens} name="opens" type="datetime-local" defaultValue={first.rules.opens} />
          <WrongField label={words.closes} name="closes" type="datetime-local" defaultValue={first.rules.closes} />
          <WrongSelect
            label={words.timeZone}
            rule={words.timeZoneRule}
            name="timeZone"
            value={zone}
            onChange={({ currentTarget }) => setZone(currentTarget.value)}
            options={timeZones.map((value) => ({ value, label: value }))}
          />
        </div>
      </FieldGroup>
    </>
  );
}
