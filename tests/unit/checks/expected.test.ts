import { expect, test } from 'vitest';
import { compareMeasured, measured } from '@/lib/checks/expected';
import { aGauge } from '../../support/gauge';

const gauge = aGauge();
const exact = { uncertainty: 0 };

test('a shown value is measured in SI with the uncertainty of its instrument', () => {
  const seen = measured({ kind: 'value', quantity: 'pressure', value: 42.5, unit: 'kPa' }, gauge);
  // Class 1.6 of 100 kPa and a readability of 0.5 kPa, both rectangular.
  expect(seen).toEqual({
    value: 42.5e3,
    uncertainty: expect.closeTo(Math.hypot(1600, 500) / Math.sqrt(3), 6),
    beyond: undefined,
  });
});

test('a stopped pointer says on which side the truth lies', () => {
  const seen = measured({ kind: 'off-scale', quantity: 'pressure', end: 'high', limit: 100, unit: 'kPa' }, gauge);
  expect(seen).toMatchObject({ value: 100e3, beyond: 'high' });
});

test('codes are counted for certain', () => {
  const codes = [{ spn: 157, fmi: 18 }];
  expect(measured({ kind: 'codes', quantity: 'codes', codes }, gauge)).toEqual({
    value: 1,
    uncertainty: 0,
    beyond: undefined,
  });
});

test('a destroyed gauge has measured nothing', () => {
  expect(measured({ kind: 'destroyed', quantity: 'pressure' }, gauge)).toBeUndefined();
});

test('a pointer stopped past the limit settles it', () => {
  expect(compareMeasured({ value: 100, beyond: 'high', ...exact }, { max: 80 })).toBe('above');
  expect(compareMeasured({ value: 0, beyond: 'low', ...exact }, { min: 20 })).toBe('below');
});

test('a pointer stopped before a limit that lies further the same way leaves it open', () => {
  expect(compareMeasured({ value: 100, beyond: 'high', ...exact }, { max: 120 })).toBe('too-close');
  expect(compareMeasured({ value: 0, beyond: 'low', ...exact }, { min: -20 })).toBe('too-close');
});

test('a pointer stopped beyond a lower limit passes it, since the truth lies higher still', () => {
  expect(compareMeasured({ value: 100, beyond: 'high', ...exact }, { min: 70 })).toBe('within');
});
