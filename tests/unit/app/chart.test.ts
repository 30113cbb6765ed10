import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chartOf, chartUnit } from '@/app/_ui/gauges/chart';
import { chartScale, gridLines, onScale } from '@/app/_ui/gauges/chart-scale';
import { type Line, labelPlaces } from '@/app/_ui/gauges/label-place';
import { tellingPoints } from '@/app/_ui/gauges/telling-points';
import { rowsOf } from '@/app/_ui/gauges/trace-table';
import { unitRead, unitsToEnter } from '@/app/_ui/gauges/unit-read';
import type { ShownLine } from '@/lib/checks/shown';
import { unitNames } from '@/lib/units';
import { aGauge } from '../../support/gauge';

// By hand: the smallest of 1, 2, 5 × 10ⁿ that needs no more steps than allowed, cut in fifths, quarters or fifths.
test.each([
  [0, 5, 10, { min: 0, max: 5, major: 0.5, minor: 0.1 }],
  [0, 180, 10, { min: 0, max: 180, major: 20, minor: 5 }],
  [0, 600, 10, { min: 0, max: 600, major: 100, minor: 20 }],
  [0, 168, 8, { min: 0, max: 200, major: 50, minor: 10 }],
  [-3, 26_107, 8, { min: -5000, max: 30_000, major: 5000, minor: 1000 }],
  [0, 0, 8, { min: 0, max: 1, major: 0.2, minor: 0.05 }],
])('from %s to %s in at most %s steps', (low, high, most, scale) => {
  expect(chartScale(low, high, most)).toEqual(scale);
});

test('every scale holds its values and zero, in steps of 1, 2 or 5 that are no more than allowed', () => {
  const ends = fc.double({ min: -1e5, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(ends, ends, fc.integer({ min: 3, max: 12 }), (one, other, most) => {
      const [low, high] = [Math.min(one, other), Math.max(one, other)];
      fc.pre(high - low > 1e-3);
      const scale = chartScale(low, high, most);
      // A millionth of a step is binary dust.
      expect(scale.min).toBeLessThanOrEqual(Math.min(0, low) + scale.major * 1e-6);
      expect(scale.max).toBeGreaterThanOrEqual(Math.max(0, high) - scale.major * 1e-6);
      expect(Math.round((scale.max - scale.min) / scale.major)).toBeLessThanOrEqual(most);
      expect(['1', '2', '5']).toContain(scale.major.toExponential(6).replace(/[.].*/, ''));
      expect(gridLines(scale)[0]).toEqual({ value: scale.min, numbered: true });
      expect(gridLines(scale).at(-1)).toEqual({ value: scale.max, numbered: true });
    }),
    // The line along zero once stood a rounding away from it.
    { endOnFailure: true, examples: [[-0.001005629766746706, -9.712240959072146e-20, 6]] },
  );
});

const times = Array.from({ length: 101 }, (_, i) => i / 10);
const rising: ShownLine = { id: 'sensed-rail-pressure', unit: 'MPa', times, values: times.map((at) => at * 16) };
const asked: ShownLine = { id: 'commanded-rail-pressure', unit: 'MPa', times, values: times.map(() => 100) };

test('a chart is ruled in the reader’s units and keeps asked and measured apart without colour', () => {
  const chart = chartOf([rising, asked], 'bar-c');
  expect(chart).toMatchObject({ unit: 'bar', axis: 'pressure', time: { max: 10 }, value: { min: 0, max: 2000 } });
  expect(chart.lines.map(({ stroke }) => stroke)).toEqual(['solid', 'dashed']);
  expect(chart.lines[0]?.places.at(-1)).toEqual([1, 0.8]);
  expect(chart.lines[1]?.places[0]).toEqual([0, onScale(1000, chart.value)]);
});

test('a vacuum is ruled as shops measure it', () => {
  const vacuum: ShownLine = { id: 'tank-vacuum', unit: 'kPa', times: [0, 600], values: [0, 12] };
  expect(chartOf([vacuum], 'psi-f')).toMatchObject({ unit: 'inHg', axis: 'vacuum' });
  expect(chartUnit([vacuum], 'kpa-c')).toBe('kPa');
});

test('what is read off a chart is written down in the unit it is ruled in; seconds stay seconds', () => {
  const recorder = aGauge({ display: 'trace', unit: 'MPa' });
  expect(unitRead(recorder, [rising, asked], 'psi-f')).toBe('psi');
  expect(unitRead({ ...recorder, unit: 's' }, [rising, asked], 'psi-f')).toBe('s');
  expect(unitRead(aGauge(), [], 'psi-f')).toBe('kPa');
});

test('a value may be written down in units of its own kind and no other', () => {
  expect(unitsToEnter('psi')).toEqual(['psi', 'kPa', 'MPa', 'bar', 'inHg']);
  expect(unitsToEnter('°C')).toEqual(['°C', '°F']);
  for (const unit of ['s', 'V', 'A', 'Ω', 'kg/m³', 'grade'] as const) expect(unitsToEnter(unit)).toEqual([unit]);
  for (const unit of unitNames) expect(unitsToEnter(unit)[0]).toBe(unit);
});

test('the points that tell a curve are its ends and its corners', () => {
  const corners = times.map((at) => (at < 2 ? 0 : at < 5 ? (at - 2) * 10 : 30));
  expect(tellingPoints(times, [corners], 12)).toEqual([0, 20, 50, 100]);
  expect(tellingPoints(times, [times.map(() => 7)], 12)).toEqual([0, 100]);
  expect(tellingPoints([], [[]], 12)).toEqual([]);
});

test('a table of a curve is as long as asked, in order, and gives the curve back', () => {
  const curve = times.map((at) => 100 * (1 - Math.exp(-at)));
  const rows = tellingPoints(times, [curve], 12);
  expect(rows).toHaveLength(12);
  expect(rows).toEqual([...rows].sort((a, b) => a - b));
  // A chord of half a second, where the curve bends most (f″ = 100 at the start), is off by f″h²/8 ≈ 3.
  for (const [index, value] of curve.entries()) expect(Math.abs(value - between(rows, curve, index))).toBeLessThan(3);
});

test('a table has a row for each time that is asked for, whatever the curves do there', () => {
  const flat = times.map(() => 7);
  expect(rowsOf(times, [flat], [])).toEqual([0, 100]);
  expect(rowsOf(times, [flat], [2.5, 0, 9])).toEqual([0, 25, 90, 100]);
  expect(rowsOf(times, [flat], [11])).toEqual([0, 100]);
});

function between(rows: readonly number[], curve: readonly number[], index: number): number {
  const end = rows.find((row) => row >= index) ?? 0;
  const start = rows.findLast((row) => row <= index) ?? 0;
  const [low = 0, high = 0] = [curve[start], curve[end]];
  return end === start ? low : low + ((high - low) * (index - start)) / (end - start);
}

test('the names of two lines stand beside their own line, on neither and not on each other', () => {
  const steady: Line = times.map((at) => [at / 10, 0.6]);
  const risen: Line = times.map((at) => [at / 10, Math.min(0.5, at / 4)]);
  const [first, second] = labelPlaces([steady, risen]);
  // Half a label's height off the line at least; and nearer to the own line than to the other.
  expect(Math.abs((first?.y ?? 0) - 0.6)).toBeGreaterThanOrEqual(0.06);
  expect(first?.y).toBeGreaterThan(0.55);
  expect(second?.y).toBeLessThan(0.5);
  for (const [x, y] of risen)
    if (Math.abs(x - (second?.x ?? 0)) < 0.21) expect(Math.abs(y - (second?.y ?? 0))).toBeGreaterThanOrEqual(0.06);
});

test('where two lines are one, their names stand on either side of it', () => {
  const steady: Line = times.map((at) => [at / 10, 0.4]);
  const [first, second] = labelPlaces([steady, steady.map(([x, y]) => [x, y] as const)]);
  const overlap =
    Math.abs((first?.x ?? 0) - (second?.x ?? 0)) < 0.42 && Math.abs((first?.y ?? 0) - (second?.y ?? 0)) < 0.12;
  expect(overlap).toBe(false);
});

test('a name stays on the paper and off its line even when the line runs along the edge', () => {
  const flat: Line = times.map((at) => [at / 10, 0]);
  const [{ y } = { y: 0 }] = labelPlaces([flat]);
  expect(y).toBeGreaterThanOrEqual(0.06);
  expect(y).toBeLessThan(0.2);
});
