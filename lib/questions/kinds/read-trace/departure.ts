import type { ShownLine } from '../../../checks/shown';

/** How two lines are told apart. */
export interface Tolerance {
  /** In the lines' unit: a greater distance is plain to see. */
  plain: number;
  /** Seconds by which the same may happen sooner or later. */
  slack: number;
}

/** At each point, how far a line lies outside of what the other shows within the slack; 0 where it does not. */
export function departures(line: ShownLine, other: ShownLine, slack: number): number[] {
  const band = bandOf([other], slack);
  return line.values.map((value, index) => outside(value, band[index]));
}

/** The lowest and highest of what lines show around each point. */
export function bandOf(lines: readonly ShownLine[], slack: number): (readonly [number, number])[] {
  const [first] = lines;
  if (!first) return [];
  const step = (first.times[1] ?? 1) - (first.times[0] ?? 0);
  const reach = Math.round(slack / step);
  return first.times.map((_, index) => {
    const near = lines.flatMap(({ values }) => values.slice(Math.max(0, index - reach), index + reach + 1));
    return [Math.min(...near), Math.max(...near)];
  });
}

/** How far a value lies beyond a band, with its sign. */
export function outside(value: number, [low, high]: readonly [number, number] = [value, value]): number {
  if (value > high) return value - high;
  return value < low ? value - low : 0;
}

/** The index of what lies farthest out. */
export function farthest(apart: readonly number[]): number {
  return apart.reduce((most, one, index) => (Math.abs(one) > Math.abs(apart[most] ?? 0) ? index : most), 0);
}
