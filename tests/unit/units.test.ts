import { expect, test } from 'vitest';
import { dimensionOf, fromSi, toSi, type Unit, unitNames } from '@/lib/units';

test.each(unitNames)('a value in %s goes to SI and back', (unit) => {
  // Two roundings of a double, the larger on 0 °F, which lies at 255 K.
  for (const value of [-40, 0, 0.25, 12.5, 4000]) expect(fromSi(toSi(value, unit), unit)).toBeCloseTo(value, 9);
});

test.each<[Unit, Unit]>([
  ['°C', '°F'],
  ['°F', '°C'],
])('minus forty %s is minus forty %s', (from, to) => {
  expect(fromSi(toSi(-40, from), to)).toBeCloseTo(-40, 9);
});

test('temperatures keep their zero apart from their step', () => {
  expect(toSi(0, '°C')).toBe(273.15);
  expect(toSi(1, '°C') - toSi(0, '°C')).toBeCloseTo(1, 12);
  expect(toSi(212, '°F')).toBeCloseTo(373.15, 9);
});

test('every unit has a dimension, and pressures do not mix with flows', () => {
  expect(dimensionOf('inHg')).toBe(dimensionOf('MPa'));
  expect(dimensionOf('mL/min')).toBe('flow');
  expect(dimensionOf('psi')).not.toBe(dimensionOf('mL/min'));
});
