import seedrandom from 'seedrandom';

/** Seeded numbers for one named purpose. The same seed and name give the same numbers on any machine. */
export interface RandomStream {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform in [min, max). */
  between(min: number, max: number): number;
  /** One of the items, each as likely as its weight says. */
  pick<T>(items: readonly T[], weight?: (item: T) => number): T;
}

/** A stream of its own for each name: drawing once more from one stream moves nothing in another. */
export function randomStream(seed: string, name: string): RandomStream {
  const generate = seedrandom.alea(`${name}\u0000${seed}`);
  const next = () => generate();
  return {
    next,
    between: (min, max) => min + (max - min) * next(),
    pick: (items, weight = () => 1) => pickWeighted(items, weight, next()),
  };
}

function pickWeighted<T>(items: readonly T[], weight: (item: T) => number, at: number): T {
  const last = items[items.length - 1];
  if (last === undefined) throw new RangeError('Cannot pick from an empty list');
  const total = items.reduce((sum, item) => sum + weight(item), 0);
  let left = at * total;
  for (const item of items) {
    left -= weight(item);
    if (left < 0) return item;
  }
  return last;
}
