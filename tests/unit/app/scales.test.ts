import { expect, test } from 'vitest';
import { markPosition, scaleMarks } from '@/app/_ui/gauges/mark-position';
import { displayUnit, showAtResolution, showNumber, showSi } from '@/app/_ui/show-quantity';
import { loadCatalogue } from '@/content/load';

test.each([
  [6.5, { number: 5, divisions: 3, half: false }],
  [6.75, { number: 5, divisions: 3, half: true }],
  [5, { number: 5, divisions: 0, half: false }],
  [0.25, { number: 0, divisions: 0, half: true }],
  [29.75, { number: 25, divisions: 9, half: true }],
  [30, { number: 30, divisions: 0, half: false }],
])('at %s the needle is described by the marks it stands between', (value, position) => {
  expect(markPosition(value, { major: 5, minor: 0.5 }, 0)).toEqual(position);
});

test('every value that an instrument with a scale can show is described so that it can be read back', () => {
  for (const { scale, range, resolution } of loadCatalogue().gauges.values()) {
    if (!scale) continue;
    for (let step = 0; step <= Math.round((range.max - range.min) / resolution); step++) {
      const value = range.min + step * resolution;
      const { number, divisions, half } = markPosition(value, scale, range.min);
      // A millionth of a division is binary dust; half a division is the finest that a scale's instrument shows.
      expect(Math.abs(number + (divisions + (half ? 0.5 : 0)) * scale.minor - value)).toBeLessThan(scale.minor * 1e-6);
    }
  }
});

test('a scale is numbered at both ends', () => {
  const marks = scaleMarks({ major: 50, minor: 5 }, { min: 0, max: 300 });
  expect(marks).toHaveLength(61);
  expect([marks[0], marks.at(-1)]).toEqual([
    { value: 0, rank: 0 },
    { value: 300, rank: 0 },
  ]);
  expect(marks[5]).toEqual({ value: 25, rank: 1 });
});

test('a pressure is shown in the reader’s units, a vacuum as shops measure it', () => {
  expect(showSi(70_000, 'kPa', 'kpa-c')).toBe('70\u00a0kPa');
  expect(showSi(70_000, 'kPa', 'psi-f')).toBe('10.2\u00a0psi');
  expect(showSi(70_000, 'kPa', 'bar-c')).toBe('0.7\u00a0bar');
  expect(showSi(27_000, 'kPa', 'psi-f', true)).toBe('7.97\u00a0inHg');
  expect(showSi(180e6, 'MPa', 'kpa-c')).toBe('180\u00a0MPa');
  expect(displayUnit('kpa-c', 'kPa', 999_000)).toBe('kPa');
});

test('air is shown in degrees and flow in millilitres', () => {
  expect(showSi(285.15, 'K', 'kpa-c')).toBe('12\u00a0°C');
  expect(showSi(285.15, 'K', 'psi-f')).toBe('53.6\u00a0°F');
  expect(showSi(110e-6 / 60, 'mL/min', 'bar-c')).toBe('110\u00a0mL/min');
});

test('numbers keep as many digits as a sheet prints, an instrument all that it gives', () => {
  expect(showNumber(1234.5)).toBe('1,235');
  expect(showNumber(0.12345)).toBe('0.123');
  expect(showNumber(-0)).toBe('0');
  expect(showAtResolution(50, 0.1)).toBe('50.0');
  expect(showAtResolution(1225, 5)).toBe('1,225');
});
