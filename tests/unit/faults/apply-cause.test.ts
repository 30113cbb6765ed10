import { describe, expect, test } from 'vitest';
import { appliesTo, applyCause, canHappen, effectsOn } from '@/lib/faults/apply-cause';
import type { Effect } from '@/lib/faults/cause';
import { elementOfKind } from '@/lib/rig/rig';
import { ZERO_CELSIUS } from '@/lib/units';
import { aRig, catalogue, causeOf, mildDay } from '../../support/bench-rig';

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

describe('two causes', () => {
  const touched = (cause: string) => effectsOn(aRig(), causeOf(cause)).map((e) => `${e.element} ${e.parameter}`);
  const ids = [...catalogue.causes.keys()].filter((id) => appliesTo(aRig(), causeOf(id)));
  const pairs = ids.flatMap((one) => ids.filter((other) => one < other).map((other) => [one, other] as const));
  const apart = pairs.filter(([one, other]) => !touched(one).some((parameter) => touched(other).includes(parameter)));

  test('that touch different parameters come to the same in either order', () => {
    expect(apart.length).toBeGreaterThan(pairs.length / 2);
    for (const [one, other] of apart) {
      const [first, second] = [causeOf(one), causeOf(other)];
      const forth = applyCause(applyCause(aRig(), first, 0.4), second, 0.7);
      const back = applyCause(applyCause(aRig(), second, 0.7), first, 0.4);
      expect(back).toEqual(forth);
    }
  });

  test('are both there: each moves what it moves alone', () => {
    const both = applyCause(applyCause(aRig(), causeOf('inlet-screen-plugged'), 0.5), anEffect(), 0.5);
    const alone = applyCause(aRig(), causeOf('inlet-screen-plugged'), 0.5);
    const screen = (rig: typeof both) => rig.elements.find(({ id }) => id === 'inlet-screen');
    expect(screen(both)).toEqual(screen(alone));
    expect(elementOfKind(both, 'lift-pump').deadHeadKpa).toBeCloseTo(healthy * 0.6, 9);
  });
});

describe('a rig of another size', () => {
  const onRigs = { 'tern-13': [{ element: 'lift-pump', parameter: 'condition', by: 'multiply', at1: 0.5 }] } as const;
  const cause = { ...anEffect(), onRigs: structuredClone(onRigs) as unknown as Record<string, Effect[]> };

  test('takes effects of its own in place of the others', () => {
    const broken = elementOfKind(applyCause(aRig(), cause, 1), 'lift-pump');
    expect(broken.condition).toBeCloseTo(elementOfKind(aRig(), 'lift-pump').condition * 0.5, 12);
    expect(broken.deadHeadKpa).toBe(healthy);
  });

  test('that is not named takes the common ones', () => {
    const broken = elementOfKind(applyCause({ ...aRig(), id: 'curlew-9' }, cause, 1), 'lift-pump');
    expect(broken.deadHeadKpa).toBeCloseTo(healthy * 0.2, 9);
  });
});

describe('whether a cause can befall a rig', () => {
  const bare = (id: string) => ({ ...aRig(), elements: aRig().elements.filter((element) => element.id !== id) });

  test('depends on its parts and their parameters', () => {
    expect(appliesTo(aRig(), causeOf('gear-pump-worn'))).toBe(true);
    expect(appliesTo(bare('gear-pump'), causeOf('gear-pump-worn'))).toBe(false);
    expect(appliesTo(aRig(), anEffect({ parameter: 'colour' }))).toBe(false);
  });

  test('nothing wrong can befall any', () => {
    for (const rig of catalogue.rigs.values()) expect(appliesTo(rig, causeOf('no-fuel-fault'))).toBe(true);
  });

  test.each([
    [-41, false],
    [-40, true],
    [4, true],
    [4.1, false],
    [30, false],
  ])('fuel waxes at %d °C: %s', (air, expected) => {
    const setting = { ...mildDay, airTemperature: ZERO_CELSIUS + air };
    expect(canHappen(aRig(), { ...causeOf('fuel-waxed'), airC: [-40, 4] }, setting)).toBe(expected);
  });

  test('a cause without a weather of its own happens in any', () => {
    for (const air of [-40, 0, 45])
      expect(canHappen(aRig(), causeOf('gear-pump-worn'), { ...mildDay, airTemperature: ZERO_CELSIUS + air })).toBe(
        true,
      );
  });
});
