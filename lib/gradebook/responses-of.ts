import type { Choices } from '../statistics/choices';
import { type Responses, responsesFrom } from '../statistics/responses';
import type { TaskResult } from './task-result';

/** The tasks of a set as items of a test: a row a person, a column a task that counts. */
export interface SetResponses {
  /** Places of the set, in the columns' order. */
  places: readonly number[];
  kinds: readonly TaskResult['kind'][];
  /** Shares, 0…1. */
  shares: Responses;
  /** Solved or not: what is right or wrong as it is; of the rest, whoever earned at least so much. */
  solved: Responses;
  /** Mean designed difficulty of what was met, logits; NaN where nobody met it. */
  design: Float64Array;
  /** Seconds of each task, NaN where it was not done. */
  seconds: readonly Float64Array[];
  choices: Choices;
}

/** A share from which a task that is not simply right or wrong counts as solved. Assumed. */
export const SOLVED_FROM = 0.6;

/** @param people  Each person's tasks, all of the same set. */
export function responsesOf(people: readonly (readonly TaskResult[])[]): SetResponses {
  const counted = (people[0] ?? []).filter(({ withdrawn }) => !withdrawn);
  const places = counted.map(({ place }) => place);
  const rows = people.map((tasks) => places.map((place) => tasks.find((task) => task.place === place)));
  return {
    places,
    kinds: counted.map(({ kind }) => kind),
    shares: responsesFrom(
      rows.map((row) => row.map((task) => task?.share ?? undefined)),
      places.map(() => 1),
    ),
    solved: responsesFrom(
      rows.map((row) => row.map(solvedOf)),
      places.map(() => 1),
    ),
    design: Float64Array.from(places, (_, column) => meanOf(rows.flatMap((row) => row[column]?.difficulty ?? []))),
    seconds: places.map((_, column) => Float64Array.from(rows, (row) => row[column]?.seconds ?? Number.NaN)),
    choices: choicesOf(rows),
  };
}

function solvedOf(task: TaskResult | undefined): number | undefined {
  if (!task || task.share === null) return undefined;
  return (task.right ?? task.share >= SOLVED_FROM) ? 1 : 0;
}

function choicesOf(rows: readonly (readonly (TaskResult | undefined)[])[]): Choices {
  const options = new Map<string, number>();
  const right = (rows[0] ?? []).map(() => new Set<string>());
  const all = rows.flatMap((row, person) =>
    row.flatMap((task, item) => {
      if (task?.right) for (const name of task.chose ?? []) right[item]?.add(name);
      return (task?.chose ?? []).map((name) => {
        if (!options.has(name)) options.set(name, options.size);
        return { person, item, option: options.get(name) ?? 0 };
      });
    }),
  );
  return {
    options: [...options.keys()],
    person: Int32Array.from(all, ({ person }) => person),
    item: Int32Array.from(all, ({ item }) => item),
    option: Int32Array.from(all, ({ option }) => option),
    right,
  };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
