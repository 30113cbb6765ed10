import type { Responses } from './responses';

/** People who answered the same items: in the Rasch model only how many they got right tells them apart. */
export interface AnswerSet {
  /** Places among the fitted items. */
  items: Int32Array;
  /** Numbers right that occur, and how many people have each. */
  groups: { right: number; people: number }[];
}

/**
 * Answers gathered for the likelihood.
 *
 * @param columns  The items that are fitted.
 */
export function answerSets({ people, items, scores }: Responses, columns: readonly number[]): AnswerSet[] {
  const sets = new Map<string, { items: Int32Array; people: Map<number, number> }>();
  for (let person = 0; person < people; person++) {
    const row = columns.map((column) => scores[person * items + column] as number);
    const answered = [...row.keys()].filter((place) => !Number.isNaN(row[place]));
    if (answered.length === 0) continue;
    const key = answered.join();
    const set = sets.get(key) ?? { items: Int32Array.from(answered), people: new Map() };
    sets.set(key, set);
    const right = answered.filter((place) => (row[place] as number) > 0).length;
    set.people.set(right, (set.people.get(right) ?? 0) + 1);
  }
  return [...sets.values()].map((set) => ({
    items: set.items,
    groups: [...set.people].map(([right, count]) => ({ right, people: count })),
  }));
}
