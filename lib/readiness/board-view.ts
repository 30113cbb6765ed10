import { type Decision, decisions } from '../competency/decision';
import { peopleByColumn } from '../people-by-column';
import type { BoardPerson } from './board';

/** Within how many days something is to change for somebody to be looked at. */
export const soonChoices = ['30', '60', '90'] as const;

/** What of a board is looked at, and in which order. */
export interface BoardView {
  /** Part of a name, whatever its case. */
  name: string;
  /** Of one class; of all where it is empty. */
  classId: string;
  decision: Decision | '';
  soon: (typeof soonChoices)[number] | '';
  /** By name, by decision, by what changes first, or by the chance on the topic of an id. */
  sort: string;
  down: boolean;
}

export const usualBoardView: BoardView = { name: '', classId: '', decision: '', soon: '', sort: 'name', down: false };

/** Days until time alone changes something about somebody: a topic's decision, or the end of their sign-off. */
export function changesIn({ cells, signedFor }: BoardPerson): number | null {
  const days = [signedFor, ...cells.map((cell) => cell.changesIn)].filter((one) => one !== null);
  return days.length === 0 ? null : Math.min(...days);
}

/** People of a board as a view shows them; whoever has nothing in the column comes last either way. */
export function viewedBoard(
  { topics, people }: { topics: readonly { id: string }[]; people: readonly BoardPerson[] },
  view: BoardView,
): BoardPerson[] {
  const wanted = view.name.trim().toLocaleLowerCase('en');
  const within = view.soon === '' ? null : Number(view.soon);
  const shown = people.filter(
    (person) =>
      person.name.toLocaleLowerCase('en').includes(wanted) &&
      (!view.classId || person.classes.includes(view.classId)) &&
      (!view.decision || person.decision === view.decision) &&
      (within === null || (changesIn(person) ?? Number.POSITIVE_INFINITY) <= within),
  );
  const column = topics.findIndex(({ id }) => id === view.sort);
  return peopleByColumn(shown, view, (person) => columnValue(person, view.sort, column));
}

function columnValue(person: BoardPerson, sort: string, column: number): number | null {
  if (sort === 'decision') return decisions.indexOf(person.decision);
  if (sort === 'soon') return changesIn(person);
  if (sort === 'signed') return person.signedFor;
  const cell = person.cells[column];
  return cell && cell.responses > 0 ? cell.chance : null;
}
