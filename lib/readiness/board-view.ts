import { type Decision, decisions } from '../competency/decision';
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
  const byName = new Intl.Collator('en', { sensitivity: 'base', numeric: true });
  const column = topics.findIndex(({ id }) => id === view.sort);
  const values = new Map(shown.map((person) => [person, columnValue(person, view.sort, column)]));
  const way = view.down ? -1 : 1;
  return shown.sort((a, b) => {
    if (view.sort === 'name') return way * byName.compare(a.name, b.name);
    const [one, other] = [values.get(a) ?? null, values.get(b) ?? null];
    if (one === other) return byName.compare(a.name, b.name);
    if (one === null || other === null) return one === null ? 1 : -1;
    return way * (one - other);
  });
}

function columnValue(person: BoardPerson, sort: string, column: number): number | null {
  if (sort === 'decision') return decisions.indexOf(person.decision);
  if (sort === 'soon') return changesIn(person);
  if (sort === 'signed') return person.signedFor;
  const cell = person.cells[column];
  return cell && cell.responses > 0 ? cell.chance : null;
}
