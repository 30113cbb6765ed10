import type { Second } from '../../units';

/** What can be followed over time, in the order a shop would go through it. */
export const traceIds = ['prime', 'crank', 'tank-vacuum', 'snap', 'decay'] as const;
export type TraceId = (typeof traceIds)[number];

export const traceLineIds = [
  'prime-pressure',
  'sensed-rail-pressure',
  'commanded-rail-pressure',
  'tank-vacuum',
] as const;
export type TraceLineId = (typeof traceLineIds)[number];

/** One quantity over time, SI, as the solver's steps gave it. */
export interface TraceLine {
  id: TraceLineId;
  times: readonly Second[];
  values: readonly number[];
}

/** A rig followed through one manoeuvre, with what can be read off: by name, SI. */
export interface Trace {
  id: TraceId;
  lines: readonly TraceLine[];
  features: Record<string, number>;
}

/** Between the solver's steps a line is straight. */
export function valueAt({ times, values }: TraceLine, time: number): number {
  let after = times.findIndex((candidate) => candidate >= time);
  if (after < 0) after = times.length - 1;
  const before = Math.max(0, after - 1);
  const [start = 0, end = 0] = [times[before], times[after]];
  const share = end > start ? (time - start) / (end - start) : 1;
  return (values[before] ?? 0) * (1 - share) + (values[after] ?? 0) * share;
}
