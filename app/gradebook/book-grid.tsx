'use client';

import { PeopleGrid } from '@/app/_ui/people-grid/people-grid';
import { type BookAssignment, type BookPerson, meanOf, type View } from '@/lib/gradebook/book';
import { BookCell, type CellWords } from './book-cell';

export interface GridWords extends CellWords {
  grid: string;
  person: string;
  mean: string;
}

/** People × assignments: what each came to, and the way to the turn behind it. */
export function BookGrid({
  assignments,
  people,
  view,
  words,
  sort,
}: {
  assignments: readonly BookAssignment[];
  people: readonly BookPerson[];
  view: View;
  words: GridWords;
  sort: (by: string) => void;
}) {
  return (
    <PeopleGrid
      words={words}
      people={people}
      summary={{ id: 'mean', title: words.mean, shown: shownMean, isNumber: true }}
      columns={assignments}
      cell={({ cells }, column) => {
        const cell = cells[column];
        return cell && <BookCell cell={cell} words={words} />;
      }}
      hrefOf={(person, column) => hrefOf(person, assignments[column], person.cells[column]?.state)}
      sorted={{ by: view.sort, down: view.down }}
      sort={sort}
    />
  );
}

function hrefOf(
  person: BookPerson,
  assignment: BookAssignment | undefined,
  state: BookPerson['cells'][number]['state'] | undefined,
): string | undefined {
  const begun = state && ['open', 'waiting', 'done'].includes(state);
  if (!assignment || !begun) return undefined;
  return `/gradebook/turns?${new URLSearchParams({ person: person.id, assignment: assignment.id })}`;
}

function shownMean({ cells }: BookPerson): string {
  const mean = meanOf(cells);
  return mean === null ? '–' : mean.toFixed(0);
}
