import { expect, test } from 'vitest';
import { recordedLines } from '@/lib/checks/recorded-lines';
import type { Trace } from '@/lib/rig/traces/trace';

const trace: Trace = {
  id: 'prime',
  lines: [{ id: 'prime-pressure', times: [0, 1, 120], values: [0, 100.3e3, 219.3e3] }],
  features: {},
};

const [line] = recordedLines(trace);

test('a recorder spaces its points evenly from the first moment to the last', () => {
  const times = line?.times ?? [];
  expect([times[0], times.at(-1)]).toEqual([0, 120]);
  const steps = times.slice(1).map((time, index) => time - (times[index] ?? 0));
  // Times are kept to six figures: a thousandth of a second in two minutes.
  for (const step of steps) expect(Math.abs(step - (steps[0] ?? 0))).toBeLessThanOrEqual(2e-3);
});

test('it shows what lies on the straight line between two of the solver’s steps, in its unit and at its step', () => {
  expect(line?.unit).toBe('kPa');
  const [times, values] = [line?.times ?? [], line?.values ?? []];
  const late = times.findIndex((time) => time > 60);
  // 1 kPa a second from 100.3 kPa at 1 s; the recorder's step is 0.5 kPa.
  const expected = 100.3 + (times[late] ?? 0) - 1;
  expect(Math.abs((values[late] ?? 0) - expected)).toBeLessThanOrEqual(0.25 + 1e-3);
  for (const value of values) expect((value * 2) % 1).toBeCloseTo(0, 6);
});

test('it begins and ends where the trace does', () => {
  expect([line?.values[0], line?.values.at(-1)]).toEqual([0, 219.5]);
});

test('commanded and sensed rail pressure are two lines of one recording, in megapascals', () => {
  const lines = recordedLines({
    id: 'snap',
    lines: (['sensed-rail-pressure', 'commanded-rail-pressure'] as const).map((id) => ({
      id,
      times: [0, 1],
      values: [0, 50e6],
    })),
    features: {},
  });
  expect(lines.map(({ id, unit }) => [id, unit])).toEqual([
    ['sensed-rail-pressure', 'MPa'],
    ['commanded-rail-pressure', 'MPa'],
  ]);
});
