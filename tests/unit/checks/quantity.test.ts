import { expect, test } from 'vitest';
import type { Quantity } from '@/lib/checks/check';
import { trueValue } from '@/lib/checks/quantity';
import type { ConditionId } from '@/lib/rig/condition';
import { aState } from '../../support/state';

const state = aState({
  pressures: { 'pump-inlet': 90e3, 'pump-outlet': 250e3 },
  temperatures: { tank: 300 },
  flows: { filter: 1e-5 },
  values: { ambientPressure: 100e3, meteringDemand: 0.4, cloudMargin: -3 },
});

function of(of: Quantity['of'], condition: ConditionId = 'idle', grades?: Quantity['grades']): number {
  const quantity: Quantity = { id: 'a-quantity', measures: 'gauge-pressure', of, ...(grades && { grades }) };
  return trueValue(state, condition, quantity, 2);
}

test('pressures are taken against ambient, a vacuum as positive', () => {
  expect(of({ kind: 'above-ambient', node: 'pump-outlet' })).toBe(150e3);
  expect(of({ kind: 'below-ambient', node: 'pump-inlet' })).toBe(10e3);
  expect(of({ kind: 'drop', from: 'pump-outlet', to: 'pump-inlet' })).toBe(160e3);
});

test('flows, temperatures, values and the number of codes are taken as they are', () => {
  expect(of({ kind: 'flow', element: 'filter' })).toBe(1e-5);
  expect(of({ kind: 'temperature', node: 'tank' })).toBe(300);
  expect(of({ kind: 'value', key: 'meteringDemand' })).toBe(0.4);
  expect(of({ kind: 'code-count' })).toBe(2);
});

test('what is read off a trace needs no condition at rest', () => {
  const { undershoot } = state.traces.get('snap').features;
  expect(undershoot).toBeGreaterThan(0);
  expect(of({ kind: 'trace', trace: 'snap', feature: 'undershoot' }, 'snap-acceleration')).toBe(undershoot);
});

test('nothing else can be read where nothing comes to rest', () => {
  expect(() => of({ kind: 'flow', element: 'filter' }, 'snap-acceleration')).toThrow(/snap-acceleration/);
});

const haze: Quantity['grades'] = { unit: 'K', steps: [{ below: -6, grade: 2 }, { below: 0, grade: 1 }, { grade: 0 }] };

test('an eye gives a grade: that of the first step whose bound the value stays below', () => {
  expect(of({ kind: 'value', key: 'cloudMargin' }, 'idle', haze)).toBe(1);
  expect(of({ kind: 'value', key: 'meteringDemand' }, 'idle', haze)).toBe(0);
  expect(of({ kind: 'value', key: 'meteringDemand' }, 'idle', { ...haze, unit: '%' })).toBe(0);
});

test('a value on a bound is past it, and bounds are in the unit of the grades', () => {
  const level: Quantity['grades'] = { unit: '%', steps: [{ below: 40, grade: 1 }, { grade: 0 }] };
  expect(of({ kind: 'value', key: 'meteringDemand' }, 'idle', level)).toBe(0);
  const higher = { ...level, steps: [{ below: 41, grade: 1 }, { grade: 0 }] };
  expect(of({ kind: 'value', key: 'meteringDemand' }, 'idle', higher)).toBe(1);
});

test.each([
  [{ kind: 'above-ambient', node: 'attic' }],
  [{ kind: 'drop', from: 'pump-outlet', to: 'attic' }],
  [{ kind: 'flow', element: 'attic' }],
  [{ kind: 'temperature', node: 'attic' }],
  [{ kind: 'value', key: 'attic' }],
  [{ kind: 'trace', trace: 'prime', feature: 'attic' }],
] as const)('a quantity of what the state does not have is refused by name: %o', (quantity) => {
  expect(() => of(quantity)).toThrow(/attic/);
});
