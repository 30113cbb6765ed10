import { peopleByColumn } from '../people-by-column';

/**
 * Where somebody stands with an assignment.
 * - `not-given`: it was not given to them; `not-begun`: nothing yet, and it may still be; `missed`: nothing, and it closed;
 * - `open`: they are at it; `waiting`: handed in, a person has to mark something; `done`: marked;
 * - `unseen`: handed in, and marked without names until everything is.
 */
export const cellStates = ['not-given', 'not-begun', 'missed', 'open', 'waiting', 'done', 'unseen'] as const;
export type CellState = (typeof cellStates)[number];

export interface Cell {
  state: CellState;
  /** 0…100 of the turn that counts; null where there is none to show. */
  total: number | null;
  late: boolean;
}

export interface BookAssignment {
  id: string;
  title: string;
  /** Milliseconds since 1970. */
  closesAt: number;
}

export interface BookPerson {
  id: string;
  name: string;
  classes: readonly string[];
  /** One for each assignment of the book, in their order. */
  cells: readonly Cell[];
}

export interface Book {
  assignments: readonly BookAssignment[];
  people: readonly BookPerson[];
}

/** Mean of the totals that are there, missed ones counting as nothing; null without any. */
export function meanOf(cells: readonly Cell[]): number | null {
  const counted = cells.filter(({ state, total }) => state === 'missed' || total !== null);
  if (counted.length === 0) return null;
  return counted.reduce((sum, { total }) => sum + (total ?? 0), 0) / counted.length;
}

/** What of the book is looked at, and in which order. */
export interface View {
  /** Part of a name, whatever its case. */
  name: string;
  /** Of one class; of all where it is empty. */
  classId: string;
  /** Only people with a cell in this state; all where it is empty. */
  state: CellState | '';
  /** By name, by mean, or by the assignment of an id. */
  sort: string;
  /** The other way round. */
  down: boolean;
}

export const usualView: View = { name: '', classId: '', state: '', sort: 'name', down: false };

/** People of a book as a view shows them; whoever has nothing in the column comes last either way. */
export function viewed<P extends BookPerson>(
  book: { assignments: readonly BookAssignment[]; people: readonly P[] },
  view: View,
): P[] {
  const wanted = view.name.trim().toLocaleLowerCase('en');
  const shown = book.people.filter(
    ({ name, classes, cells }) =>
      name.toLocaleLowerCase('en').includes(wanted) &&
      (!view.classId || classes.includes(view.classId)) &&
      (!view.state || cells.some(({ state }) => state === view.state)),
  );
  const column = book.assignments.findIndex(({ id }) => id === view.sort);
  return peopleByColumn(shown, view, (person) => columnValue(person, view.sort, column));
}

function columnValue(person: BookPerson, sort: string, column: number): number | null {
  return sort === 'mean' ? meanOf(person.cells) : (person.cells[column]?.total ?? null);
}
