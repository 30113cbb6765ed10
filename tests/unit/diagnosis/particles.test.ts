import { describe, expect, test } from 'vitest';
import { trueValue } from '@/lib/checks/quantity';
import { Particles, particlesOf } from '@/lib/diagnosis/particles';
import { between, slicesBetween } from '@/lib/diagnosis/strata';
import { applyCause, canHappen } from '@/lib/faults/apply-cause';
import { PointsOnDemand } from '@/lib/rig/points-on-demand';
import {
  aRig,
  catalogue,
  causeOf,
  fuelOf,
  healthyPoints,
  mildDay,
  pointsWith,
  stateOf,
  stateWith,
} from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const order = { complaint: 'lacks-power', codes: [] } as const;
const known = { rig: aRig(), setting: mildDay, workOrder: order, points: stateOf().points };
const particles = new Particles({ ...known, spec: {} }, catalogue);
const paired = new Particles({ ...known, spec: { hardest: true } }, catalogue);

test('a particle lies within the severities of its cause, and the cause can befall the rig', () => {
  particles.causes.forEach((causes, index) => {
    const [cause] = causes;
    const [severity = -1] = particles.severities[index] ?? [];
    expect(causes).toHaveLength(1);
    expect(cause && canHappen(aRig(), cause, mildDay)).toBe(true);
    expect(severity).toBeGreaterThanOrEqual(cause?.severity.min ?? 2);
    expect(severity).toBeLessThanOrEqual(cause?.severity.max ?? -1);
  });
});

test('the work order leaves only what would have led to it', () => {
  const ids = new Set(particles.causes.flat().map(({ id }) => id));
  expect(ids).toContain('main-filter-plugged');
  // An open circuit of the metering actuator is stored as a code.
  expect(
    particles.start
      .filter((_, index) => particles.causes[index]?.[0]?.id === 'metering-actuator-open-circuit')
      .reduce((a, b) => a + b, 0),
  ).toBeLessThan(1e-3);
});

test('how common a cause is weighs before anything is seen', () => {
  const weights = (id: string) => particles.start.filter((_, index) => particles.causes[index]?.[0]?.id === id);
  const total = (id: string) => weights(id).reduce((sum, weight) => sum + weight, 0);
  // Both lack power at every severity that is noticed, so that the prior alone tells them apart.
  const ratio = total('supply-filter-plugged') / total('supply-line-restricted');
  expect(ratio).toBeGreaterThan(
    0.5 * (causeOf('supply-filter-plugged').weight / causeOf('supply-line-restricted').weight),
  );
});

// Not so where a pump falls off its curve, as behind a plugged supply filter: there a slice straddles the fall.
test.each(['main-filter-plugged', 'inlet-screen-plugged', 'injector-leakage-high', 'gear-pump-worn'])(
  'a reading between two solved severities of %s is near what solving there gives',
  (cause) => {
    const check = catalogue.checks.get('gear-pump-pressure');
    const quantity = check?.quantities[0];
    if (!check || !quantity) throw new Error('no such check');
    const all = new Particles({ ...known, spec: {}, workOrder: order }, catalogue);
    const { expected, spread } = all.valuesOf(check.id, quantity, 'full-load');
    all.causes.forEach((causes, index) => {
      const [severity] = all.severities[index] ?? [];
      if (causes[0]?.id !== cause || severity === undefined) return;
      const solved = trueValue(stateWith(cause, severity), 'full-load', quantity, 0);
      // A tenth of the value, or the slice's own width: what interpolation may be off by where the curve bends.
      const slack = 0.1 * Math.abs(solved) + 2 * (spread[index] ?? 0);
      expect(Math.abs((expected[index] ?? Number.NaN) - solved)).toBeLessThan(slack);
    });
  },
);

test('at the hardest level two causes that have nothing to do with each other are particles too', () => {
  const doubles = paired.causes.filter((causes) => causes.length === 2);
  expect(doubles.length).toBeGreaterThan(50);
  for (const [one, other] of doubles) {
    expect(one?.area).not.toBe(other?.area);
    expect(one?.element).not.toBe(other?.element);
  }
  expect(paired.start.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
});

test('the truth itself is not looked at: two causes behind one work order give the same particles', () => {
  const [one, other] = [aCase({ cause: 'main-filter-plugged' }), aCase({ cause: 'gear-pump-worn' })];
  const blind = { ...other, workOrder: one.workOrder, points: one.points };
  expect([...particlesOf(blind, catalogue).start]).toEqual([...particlesOf(one, catalogue).start]);
});

describe('points on demand', () => {
  const sound = new PointsOnDemand(aRig(), mildDay, fuelOf(mildDay));

  test('of the healthy rig are its operating points', () => {
    expect({ ...sound['full-load'] }).toEqual(healthyPoints()['full-load']);
  });

  test('set out from a rig nearby and come to the same rest', () => {
    const rig = applyCause(aRig(), causeOf('main-filter-plugged'), 0.9);
    const near = new PointsOnDemand(rig, mildDay, fuelOf(mildDay), sound);
    const alone = pointsWith('main-filter-plugged', 0.9);
    for (const condition of ['cranking', 'idle', 'full-load'] as const) {
      for (const [node, pressure] of Object.entries(alone[condition].pressures)) {
        // Both stop once no side's temperature moves by 0.05 K, a thousandth of a viscosity.
        expect(Math.abs((near[condition].pressures[node] ?? 0) - pressure)).toBeLessThan(
          2e-3 * Math.abs(pressure) + 50,
        );
      }
    }
  });
});

describe('slices', () => {
  test('lie evenly over the range, each between its two solved severities', () => {
    const slices = slicesBetween([0, 0.5, 1]);
    expect(slices.map(({ severity }) => severity)).toEqual([
      0.0625, 0.1875, 0.3125, 0.4375, 0.5625, 0.6875, 0.8125, 0.9375,
    ]);
    expect(slices.map(({ lower }) => lower)).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
  });

  test('of the one way to have a cause are one', () => {
    expect(slicesBetween([1])).toEqual([{ lower: 0, upper: 0, share: 0, severity: 1 }]);
  });
});

describe('between', () => {
  test('goes by ratio where both have one sign, straight where not, and jumps to what never comes', () => {
    expect(between(1, 100, 0.5)).toBeCloseTo(10, 12);
    expect(between(-1, -100, 0.5)).toBeCloseTo(-10, 12);
    expect(between(0, 10, 0.3)).toBeCloseTo(3, 12);
    expect(between(-5, 5, 0.5)).toBeCloseTo(0, 12);
    expect(between(2, Number.POSITIVE_INFINITY, 0.4)).toBe(2);
    expect(between(2, Number.POSITIVE_INFINITY, 0.6)).toBe(Number.POSITIVE_INFINITY);
  });
});
