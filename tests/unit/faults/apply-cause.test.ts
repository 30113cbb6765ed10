import { expect, test } from 'vitest';
import { applyCause } from '@/lib/faults/apply-cause';
import type { Effect } from '@/lib/faults/cause';
import { elementOfKind } from '@/lib/rig/rig';
import { aRig, causeOf } from '../../support/bench-rig';

function anEffect(changes: Partial<Effect> = {}): { effects: Effect[] } {
  return { effects: [{ element: 'lift-pump', parameter: 'deadHeadKpa', by: 'multiply', at1: 0.2, ...changes }] };
}

const healthy = elementOfKind(aRig(), 'lift-pump').deadHeadKpa;

test.each([
  ['multiply', 0.2, 0.5, healthy * 0.6],
  ['multiply', 0.2, 1, healthy * 0.2],
  ['scale', 0.25, 0.5, healthy * 0.5],
  ['scale', 16, 0.25, healthy * 2],
  ['add', 30, 0.5, healthy + 15],
  ['add', -30, 1, healthy - 30],
] as const)('%s by %d at severity %d moves the parameter to %d', (by, at1, severity, expected) => {
  const broken = applyCause(aRig(), anEffect({ by, at1 }), severity);
  expect(elementOfKind(broken, 'lift-pump').deadHeadKpa).toBeCloseTo(expected, 9);
});

test.each(['multiply', 'scale', 'add'] as const)('%s leaves the rig exactly as it is at severity 0', (by) => {
  expect(applyCause(aRig(), anEffect({ by, at1: 7.3 }), 0)).toEqual(aRig());
});

test('only the named parameter of the named element changes', () => {
  const broken = applyCause(aRig(), anEffect(), 1);
  const others = aRig().elements.filter(({ id }) => id !== 'lift-pump');
  expect(broken.elements.filter(({ id }) => id !== 'lift-pump')).toEqual(others);
  expect({ ...elementOfKind(broken, 'lift-pump'), deadHeadKpa: healthy }).toEqual(elementOfKind(aRig(), 'lift-pump'));
});

test('the healthy rig itself is not touched', () => {
  const before = structuredClone(aRig());
  applyCause(aRig(), causeOf('high-pressure-pump-worn'), 1);
  expect(aRig()).toEqual(before);
});

test('a cause with two effects moves both', () => {
  const broken = applyCause(aRig(), causeOf('high-pressure-pump-worn'), 1);
  expect(elementOfKind(broken, 'high-pressure-pump').capacityFraction).toBeLessThan(1);
  expect(elementOfKind(broken, 'clearance-leak').clearanceUm3).toBeGreaterThan(
    elementOfKind(aRig(), 'clearance-leak').clearanceUm3,
  );
});

test.each([-0.001, 1.001, Number.NaN])('severity %d is refused', (severity) => {
  expect(() => applyCause(aRig(), anEffect(), severity)).toThrow(/Severity .* outside 0…1/);
});

test('an element that the rig does not have is refused by name', () => {
  expect(() => applyCause(aRig(), anEffect({ element: 'turbocharger' }), 0.5)).toThrow(/tern-13.*turbocharger/);
});

test('a parameter that the element does not have is refused by name', () => {
  expect(() => applyCause(aRig(), anEffect({ parameter: 'colour' }), 0.5)).toThrow(/lift-pump.*colour/);
});

test('a parameter that is not a number is refused', () => {
  expect(() => applyCause(aRig(), anEffect({ parameter: 'kind' }), 0.5)).toThrow(/kind/);
});
