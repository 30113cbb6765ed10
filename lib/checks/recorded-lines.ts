import { type Trace, type TraceLine, valueAt } from '../rig/traces/trace';
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

function tidy(value: number): number {
  return Number(value.toPrecision(6));
}
