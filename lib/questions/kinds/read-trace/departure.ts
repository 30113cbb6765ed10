import type { ShownLine } from '../../../checks/shown';

/** How two lines are told apart. */
export interface Tolerance {
  /** In the lines' unit: a greater distance is plain to see. */
  plain: number;
  /** Seconds by which the same may happen sooner or later. */
  slack: number;
}

/** The lowest and highest of what lines show around each point. */
export interface Band {
  low: readonly number[];
  high: readonly number[];
}

/** What lines of the same recording show within the slack, from the lowest to the highest. */
export function bandOf(lines: readonly ShownLine[], slack: number): Band {
  const { times = [] } = lines[0] ?? {};
  const reach = Math.round(slack / ((times[1] ?? 1) - (times[0] ?? 0)));
  const over = (pick: (...values: number[]) => number) => {
    const here = times.map((_, index) => pick(...lines.map(({ values }) => values[index] ?? 0)));
    return here.map((_, index) => pick(...here.slice(Math.max(0, index - reach), index + reach + 1)));
  };
  return { low: over(Math.min), high: over(Math.max) };
}

/** At each point, how far a line lies outside of a band, with its sign; 0 where it does not. */
export function outside({ values }: ShownLine, { low, high }: Band): number[] {
  return values.map((value, index) => {
    const [least, most] = [low[index] ?? value, high[index] ?? value];
    return value > most ? value - most : Math.min(0, value - least);
  });
}

/** The index of what lies farthest out. */
export function farthest(apart: readonly number[]): number {
  return apart.reduce((most, one, index) => (Math.abs(one) > Math.abs(apart[most] ?? 0) ? index : most), 0);
}
