import { expect, test } from 'vitest';
import type { Quantity } from '@/lib/checks/check';
import { needleSwing } from '@/lib/checks/needle-swing';
import { aState } from '../../support/state';

const onLine: Quantity = {
  id: 'pressure',
  measures: 'gauge-pressure',
  of: { kind: 'above-ambient', node: 'pump-outlet' },
};

function swing(freeGasFraction: number, quantity = onLine) {
  const state = aState({
    pressures: { 'pump-outlet': 400e3 },
    temperatures: { 'pump-outlet': 300 },
    values: { freeGasFraction },
  });
  return needleSwing(state, 'idle', quantity);
}

test('a needle stands still on solid fuel and swings with the share of bubbles', () => {
  expect(swing(0)).toBe(0);
  expect(swing(0.2)).toBeGreaterThan(0);
  expect(swing(0.4)).toBeCloseTo(2 * swing(0.2), 6);
});

test('the swing is never wider than the pressure that is there', () => {
  expect(2 * swing(1)).toBeLessThanOrEqual(400e3);
});

test('neither a thermometer nor a trace nor a flow swings', () => {
  expect(swing(0.5, { ...onLine, of: { kind: 'temperature', node: 'pump-outlet' } })).toBe(0);
  expect(swing(0.5, { ...onLine, of: { kind: 'trace', trace: 'prime', feature: 'pressureHeld' } })).toBe(0);
  expect(swing(0.5, { ...onLine, of: { kind: 'flow', element: 'filter' } })).toBe(0);
});
