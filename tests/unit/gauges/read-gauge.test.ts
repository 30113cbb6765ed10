import { expect, test } from 'vitest';
import { drawBias, readGauge } from '@/lib/gauges/read-gauge';
import { randomStream } from '@/lib/random';
import { aGauge } from '../../support/gauge';

test('a gauge without error shows the truth at its resolution', () => {
  expect(readGauge(aGauge(), 42.3, 0)).toEqual({ kind: 'value', value: 42.5 });
  expect(readGauge(aGauge({ resolution: 0.25 }), 42.3, 0)).toEqual({ kind: 'value', value: 42.25 });
});

test('the bias is a share of what the class allows', () => {
  // Class 1.6 of a span of 100: 1.6 either way.
  expect(readGauge(aGauge({ resolution: 0.1 }), 50, 1)).toEqual({ kind: 'value', value: 51.6 });
  expect(readGauge(aGauge({ resolution: 0.1 }), 50, -0.5)).toEqual({ kind: 'value', value: 49.2 });
});

test('reading twice shows the same, and the bias of a case is one of what the class allows', () => {
  const biases = Array.from({ length: 200 }, (_, seed) => drawBias(randomStream(`case ${seed}`, 'bias a-gauge')));
  expect(drawBias(randomStream('case 7', 'bias a-gauge'))).toBe(biases[7]);
  expect(biases.every((bias) => Math.abs(bias) <= 1)).toBe(true);
  expect(biases.some((bias) => bias > 0.5) && biases.some((bias) => bias < -0.5)).toBe(true);
});

test('a decimal resolution leaves no binary dust', () => {
  expect(readGauge(aGauge({ resolution: 0.1 }), 0.3, 0)).toEqual({ kind: 'value', value: 0.3 });
});

test('past the end of its range the pointer stops there', () => {
  expect(readGauge(aGauge(), 104, 0)).toEqual({ kind: 'off-scale', end: 'high' });
  expect(readGauge(aGauge({ overRange: { kind: 'stops' } }), 1e6, 0)).toEqual({ kind: 'off-scale', end: 'high' });
});

test('the true pressure destroys a gauge, whatever it would have shown', () => {
  expect(readGauge(aGauge(), 130, 1)).toEqual({ kind: 'off-scale', end: 'high' });
  expect(readGauge(aGauge(), 130.1, -1)).toEqual({ kind: 'destroyed' });
});

test('a pointer on its lower stop reads zero when the truth is nothing', () => {
  expect(readGauge(aGauge(), 0, -1)).toEqual({ kind: 'value', value: 0 });
  expect(readGauge(aGauge(), 0, 0)).toEqual({ kind: 'value', value: 0 });
});

test('a truth well below the range is off the scale', () => {
  expect(readGauge(aGauge(), -1.5, 0)).toEqual({ kind: 'value', value: 0 });
  expect(readGauge(aGauge(), -20, 0)).toEqual({ kind: 'off-scale', end: 'low' });
});
