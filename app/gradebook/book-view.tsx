'use client';

import { useMemo, useState } from 'react';
import { NameSearch, orderFrom, orderOptions, Select } from '@/app/_ui/people-grid/choosing';
import ui from '@/app/_ui/ui.module.css';
import { type CellState, type View, viewed } from '@/lib/gradebook/book';
import { unpacked, type WireBook } from '@/lib/gradebook/wire';
import { BookGrid, type GridWords } from './book-grid';
import styles from './gradebook.module.css';
import { viewQuery } from './view-query';

export interface ViewWords extends GridWords {
  name: string;
  class: string;
  allClasses: string;
  state: string;
  anyState: string;
  sort: string;
  byName: string;
  byMean: string;
  down: string;
  /** With `{count}` for how many people are shown. */
  shown: string;
  nobody: string;
  exportCsv: string;
  print: string;
}

/** The book with what narrows it down and sorts it; what is exported and printed is what is seen. */
export function BookView({
  book,
  classes,
  at,
  mayExport,
  words,
}: {
  book: WireBook;
  classes: readonly { id: string; name: string }[];
  at: View;
  mayExport: boolean;
  words: ViewWords;
}) {
  const [view, look] = useState(at);
  const whole = useMemo(() => unpacked(book), [book]);
  const people = useMemo(() => viewed(whole, view), [whole, view]);
  const change = (changes: Partial<View>) => {
    const changed = { ...view, ...changes };
    look(changed);
    window.history.replaceState(null, '', `/gradebook${viewQuery(changed)}`);
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
          label={words.state}
          value={view.state}
          options={[
            { value: '', label: words.anyState },
            ...Object.entries(words.states).map(([value, label]) => ({ value, label })),
          ]}
          onChange={(state) => change({ state: state as CellState | '' })}
        />
        <Select
          label={words.sort}
          value={`${view.sort} ${view.down}`}
          options={orderOptions(
            [{ id: 'name', title: words.byName }, { id: 'mean', title: words.byMean }, ...whole.assignments],
            words.down,
          )}
          onChange={(value) => change(orderFrom(value))}
        />
      </div>
      <p role="status" className={ui.small}>
        {people.length === 0 ? words.nobody : words.shown.replace('{count}', String(people.length))}
      </p>
      <BookGrid
        assignments={whole.assignments}
        people={people}
        view={view}
        words={words}
        sort={(by) => change({ sort: by, down: by === view.sort ? !view.down : by !== 'name' })}
      />
      <p className={styles.ways}>
        {mayExport && (
          <a href={`/gradebook/export${viewQuery(view)}`} download>
            {words.exportCsv}
          </a>
        )}
        <a href={`/gradebook/print${viewQuery(view)}`}>{words.print}</a>
      </p>
    </>
  );
}
