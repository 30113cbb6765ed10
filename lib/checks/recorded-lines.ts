import type { Trace, TraceLine } from '../rig/trace';
import { fromSi, type Unit } from '../units';
import type { ShownLine } from './shown';

/** Points that a recorder keeps of a trace, the ends among them. */
const POINTS = 240;

const UNITS: Record<TraceLine['id'], { unit: Unit; step: number }> = {
  'prime-pressure': { unit: 'kPa', step: 0.5 },
  'sensed-rail-pressure': { unit: 'MPa', step: 0.1 },
  'commanded-rail-pressure': { unit: 'MPa', step: 0.1 },
  'tank-vacuum': { unit: 'kPa', step: 0.05 },
};

/** A trace as a recorder draws it: evenly spaced in time, at the recorder's steps. */
export function recordedLines({ lines }: Trace): ShownLine[] {
  return lines.map((line) => {
    const { unit, step } = UNITS[line.id];
    const end = line.times[line.times.length - 1] ?? 0;
    const times = Array.from({ length: POINTS }, (_, index) => (end * index) / (POINTS - 1));
    const values = times.map((time) => Math.round(fromSi(valueAt(line, time), unit) / step) * step);
    return { id: line.id, unit, times: times.map(tidy), values: values.map(tidy) };
  });
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

function tidy(value: number): number {
  return Number(value.toPrecision(6));
}
