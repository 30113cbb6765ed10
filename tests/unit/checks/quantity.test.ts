import { expect, test } from 'vitest';
import type { Quantity } from '@/lib/checks/check';
import { trueValue } from '@/lib/checks/quantity';
import type { OperatingPoint } from '@/lib/rig/operating-point';

const point: OperatingPoint = {
  pressures: { 'pump-inlet': 90e3, 'pump-outlet': 250e3 },
  flows: { filter: 1e-5 },
  values: { ambientPressure: 100e3, meteringDemand: 0.4 },
};

function of(of: Quantity['of']): number {
  return trueValue(point, { id: 'a-quantity', measures: 'gauge-pressure', of }, 2);
}

test('pressures are taken against ambient, a vacuum as positive', () => {
  expect(of({ kind: 'above-ambient', node: 'pump-outlet' })).toBe(150e3);
  expect(of({ kind: 'below-ambient', node: 'pump-inlet' })).toBe(10e3);
  expect(of({ kind: 'drop', from: 'pump-outlet', to: 'pump-inlet' })).toBe(160e3);
});

test('flows, values and the number of codes are taken as they are', () => {
  expect(of({ kind: 'flow', element: 'filter' })).toBe(1e-5);
  expect(of({ kind: 'value', key: 'meteringDemand' })).toBe(0.4);
  expect(of({ kind: 'code-count' })).toBe(2);
});

test.each([
  [{ kind: 'above-ambient', node: 'attic' }],
  [{ kind: 'drop', from: 'pump-outlet', to: 'attic' }],
  [{ kind: 'flow', element: 'attic' }],
  [{ kind: 'value', key: 'attic' }],
] as const)('a quantity of what the point does not have is refused by name: %o', (quantity) => {
  expect(() => of(quantity)).toThrow(/attic/);
});
