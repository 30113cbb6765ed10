import { expect, test } from 'vitest';
import { accuracyLimit, inGaugeUnit, standardUncertainty } from '@/lib/gauges/uncertainty';
import { aGauge } from '../../support/gauge';

const gradeB = aGauge({ accuracy: { kind: 'quarters', percentOfSpan: [3, 2, 3] }, range: { min: 0, max: 40 } });

test.each([
  [0, 1.2],
  [9.9, 1.2],
  [10, 0.8],
  [30, 0.8],
  [30.1, 1.2],
  [40, 1.2],
])('a grade of quarters allows at %d of 40 an error of %d', (reading, expected) => {
  expect(accuracyLimit(gradeB, reading)).toBeCloseTo(expected, 12);
});

test('a class is a share of the span, not of the reading', () => {
  const gauge = aGauge({ range: { min: 20, max: 60 }, accuracy: { kind: 'class', percentOfSpan: 2.5 } });
  expect(accuracyLimit(gauge, 21)).toBeCloseTo(1, 12);
  expect(accuracyLimit(gauge, 59)).toBeCloseTo(1, 12);
});

test('a fixed accuracy is the same everywhere', () => {
  expect(accuracyLimit(aGauge({ accuracy: { kind: 'absolute', amount: 5 } }), 77)).toBe(5);
});

test('a dial counts its whole resolution, a digital display half of its last digit', () => {
  const accuracy = { kind: 'absolute', amount: 0 } as const;
  const dial = standardUncertainty(aGauge({ accuracy, resolution: 3 }), 50);
  const digital = standardUncertainty(aGauge({ accuracy, resolution: 3, display: 'digital' }), 50);
  // kPa to Pa: a rectangle of half-width 3 kPa has a standard deviation of 3000/√3 Pa.
  expect(dial).toBeCloseTo(3000 / Math.sqrt(3), 9);
  expect(digital).toBeCloseTo(dial / 2, 9);
});

test('a recorded curve is read by eye like a dial, and what is told at a glance leaves no doubt', () => {
  const accuracy = { kind: 'absolute', amount: 0 } as const;
  const uncertainty = (display: 'trace' | 'dial' | 'eye') =>
    standardUncertainty(aGauge({ accuracy, resolution: 3, display }), 50);
  expect(uncertainty('trace')).toBe(uncertainty('dial'));
  expect(uncertainty('eye')).toBe(0);
});

test('an offset of the unit does not enter the uncertainty', () => {
  const thermometer = aGauge({ unit: '°C', accuracy: { kind: 'absolute', amount: 3 }, resolution: 4 });
  expect(standardUncertainty(thermometer, 20)).toBeCloseTo(5 / Math.sqrt(3), 9);
});

test('a true value arrives in the unit of the dial', () => {
  expect(inGaugeUnit(aGauge({ unit: 'MPa' }), 2.5e6)).toBeCloseTo(2.5, 12);
});
