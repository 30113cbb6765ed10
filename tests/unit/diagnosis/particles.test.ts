import { describe, expect, test } from 'vitest';
import { trueValue } from '@/lib/checks/quantity';
import { interpolate } from '@/lib/diagnosis/interpolate';
import { Particles, particlesOf } from '@/lib/diagnosis/particles';
import { slicesBetween } from '@/lib/diagnosis/strata';
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

test('a cause twice as common is believed twice as much before anything is seen', () => {
  const believed = (among: Particles, id: string) =>
    among.start.reduce((sum, weight, index) => sum + (among.causes[index]?.[0]?.id === id ? weight : 0), 0);
  const odds = (among: Particles) => {
    const p = believed(among, 'main-filter-plugged');
    return p / (1 - p);
  };
  const cause = causeOf('main-filter-plugged');
  const commoner = new Map(catalogue.causes).set(cause.id, { ...cause, weight: 2 * cause.weight });
  const more = new Particles({ ...known, spec: {} }, { ...catalogue, causes: commoner });
  // To one in a hundred: what is let go as too unlikely carries no more.
  expect(odds(more) / odds(particles) / 2).toBeCloseTo(1, 2);
});

// Not so where a pump falls off its curve, as behind a plugged supply filter: there a slice straddles the fall.
test.each(['main-filter-plugged', 'inlet-screen-plugged', 'injector-leakage-high', 'gear-pump-worn'])(
  'a reading between two solved severities of %s is near what solving there gives',
  (cause) => {
    const check = catalogue.checks.get('gear-pump-pressure');
    const quantity = check?.quantities[0];
    if (!check || !quantity) throw new Error('no such check');
    const all = new Particles({ ...known, spec: {}, workOrder: order }, catalogue);
    const { expected, spread } = all.valuesOf(check.id, quantity, 'full-load', true);
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
  test('lie evenly over the range, each between two solved severities', () => {
    const slices = slicesBetween([0, 0.5, 1]);
    slices.forEach(({ severity, lower, share }, index) => {
      expect(severity).toBeCloseTo((index + 0.5) / slices.length, 12);
      expect(lower).toBe(index < slices.length / 2 ? 0 : 1);
      expect(lower * 0.5 + share * 0.5).toBeCloseTo(severity, 12);
    });
  });

  test('of the one way to have a cause are one', () => {
    expect(slicesBetween([1])).toEqual([{ lower: 0, share: 0, severity: 1 }]);
  });
});

describe('interpolation', () => {
  const along = (values: readonly number[], lower: number, share: number) => interpolate(values, lower, share);

  test('goes by ratio where all have one sign, and straight where not', () => {
    expect(along([1, 100], 0, 0.5)).toBeCloseTo(10, 12);
    expect(along([-1, -100], 0, 0.5)).toBeCloseTo(-10, 12);
    expect(along([1, 10, 100, 1000], 1, 0.5)).toBeCloseTo(10 ** 1.5, 9);
    expect(along([0, 10], 0, 0.3)).toBeCloseTo(3, 12);
    expect(along([-5, 5], 0, 0.5)).toBeCloseTo(0, 12);
  });

  test('jumps to what never comes', () => {
    const never = Number.POSITIVE_INFINITY;
    expect(along([1, 2, never], 1, 0.4)).toBe(2);
    expect(along([1, 2, never], 1, 0.6)).toBe(never);
  });

  test('follows a held value to where a controller runs out, and the fall from there', () => {
    // Held at 100 up to 1.6, then halving every unit.
    const held = (x: number) => (x < 1.6 ? 100 : 100 * 0.5 ** (x - 1.6));
    const values = [0, 1, 2, 3, 4].map(held);
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.9]) expect(along(values, 1, share)).toBeCloseTo(held(1 + share), 9);
  });

  test('of a smooth curve is closer than the chord', () => {
    const curve = (x: number) => Math.exp(x * x * 0.2);
    const values = [0, 1, 2, 3].map(curve);
    const chord = Math.sqrt(curve(1) * curve(2));
    expect(Math.abs(along(values, 1, 0.5) - curve(1.5))).toBeLessThan(0.3 * Math.abs(chord - curve(1.5)));
  });
});
