'use client';

import { useMemo, useState } from 'react';
import { NameSearch, orderFrom, orderOptions, Select } from '@/app/_ui/people-grid/choosing';
import ui from '@/app/_ui/ui.module.css';
import { type Decision, decisions } from '@/lib/competency/decision';
import { soonChoices, type BoardView as View, viewedBoard } from '@/lib/readiness/board-view';
import { unpackedPeople, type WirePerson } from '@/lib/readiness/board-wire';
import styles from '../readiness.module.css';
import { BoardGrid } from './board-grid';
import { type BoardWords, daysWord, detailOf } from './board-words';
import { boardQuery } from './view-query';

/** The board with what narrows it down and sorts it. */
export function BoardView({
  profileId,
  topics,
  people: sent,
  classes,
  at,
  words,
}: {
  profileId: string;
  topics: readonly { id: string; title: string }[];
  people: readonly WirePerson[];
  classes: readonly { id: string; name: string }[];
  at: View;
  words: BoardWords;
}) {
  const [view, look] = useState(at);
  const [showsNumbers, setShowsNumbers] = useState(false);
  const [detail, setDetail] = useState('');
  const everybody = useMemo(() => unpackedPeople(sent), [sent]);
  const people = useMemo(() => viewedBoard({ topics, people: everybody }, view), [topics, everybody, view]);
  const change = (changes: Partial<View>) => {
    const changed = { ...view, ...changes };
    look(changed);
    window.history.replaceState(null, '', `/readiness${boardQuery(profileId, changed)}`);
  };
  return (
    <>
      <div className={styles.filters}>
        <NameSearch label={words.name} value={view.name} onChange={(name) => change({ name })} />
        <Select
          label={words.class}
          value={view.classId}
          options={[
            { value: '', label: words.allClasses },
            ...classes.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={(classId) => change({ classId })}
        />
        <Select
          label={words.decision}
          value={view.decision}
          options={[
            { value: '', label: words.anyDecision },
            ...decisions.map((value) => ({ value, label: words.decisions[value] })),
          ]}
          onChange={(decision) => change({ decision: decision as Decision | '' })}
        />
        <Select
          label={words.soon}
          value={view.soon}
          options={[
            { value: '', label: words.anySoon },
            ...soonChoices.map((value) => ({ value, label: daysWord(words.within, Number(value)) })),
          ]}
          onChange={(soon) => change({ soon: soon as View['soon'] })}
        />
        <Select
          label={words.sort}
          value={`${view.sort} ${view.down}`}
          options={sortOptions(topics, words)}
          onChange={(value) => change(orderFrom(value))}
        />
      </div>
      <label className={styles.tick}>
        <input type="checkbox" checked={showsNumbers} onChange={(event) => setShowsNumbers(event.target.checked)} />
        {words.numbers}
      </label>
      <p role="status" className={ui.small}>
        {people.length === 0 ? words.nobody : words.shown.replace('{count}', String(people.length))}
      </p>
      <BoardGrid
        profileId={profileId}
        topics={topics}
        people={people}
        view={view}
        words={words}
        showsNumbers={showsNumbers}
        sort={(by) => change({ sort: by, down: by === view.sort ? !view.down : false })}
        onAt={(person, topic) => {
          const cell = person?.cells[topic];
          setDetail(person && cell ? detailOf(words, person.name, topics[topic]?.title ?? '', cell) : '');
        }}
      />
      <p className={ui.small} aria-live="polite">
        {detail || words.hint}
      </p>
    </>
  );
}

function sortOptions(topics: readonly { id: string; title: string }[], words: BoardWords) {
  const columns = [
    { id: 'name', title: words.byName },
    { id: 'decision', title: words.byDecision },
    { id: 'soon', title: words.bySoon },
    { id: 'signed', title: words.bySigned },
    ...topics,
  ];
  return orderOptions(columns, words.down);
}
