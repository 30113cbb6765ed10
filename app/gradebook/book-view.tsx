'use client';

import { useMemo, useState } from 'react';
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
        <label className={ui.field}>
          <span>{words.name}</span>
          <input
            type="search"
            value={view.name}
            maxLength={80}
            onChange={(event) => change({ name: event.target.value })}
          />
        </label>
        <label className={ui.field}>
          <span>{words.class}</span>
          <select value={view.classId} onChange={(event) => change({ classId: event.target.value })}>
            <option value="">{words.allClasses}</option>
            {classes.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label className={ui.field}>
          <span>{words.state}</span>
          <select value={view.state} onChange={(event) => change({ state: event.target.value as CellState | '' })}>
            <option value="">{words.anyState}</option>
            {Object.entries(words.states).map(([state, name]) => (
              <option key={state} value={state}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label className={ui.field}>
          <span>{words.sort}</span>
          <select value={`${view.sort} ${view.down}`} onChange={(event) => change(sortFrom(event.target.value))}>
            {[false, true].flatMap((down) =>
              [{ id: 'name', title: words.byName }, { id: 'mean', title: words.byMean }, ...whole.assignments].map(
                ({ id, title }) => (
                  <option key={`${id} ${down}`} value={`${id} ${down}`}>
                    {title}
                    {down && ` (${words.down})`}
                  </option>
                ),
              ),
            )}
          </select>
        </label>
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

function sortFrom(value: string): Pick<View, 'sort' | 'down'> {
  const [sort = 'name', down] = value.split(' ');
  return { sort, down: down === 'true' };
}
