import { expect, test } from 'vitest';
import { clearanceLeakLaw } from '@/lib/hydraulics/elements/clearance-leak';
import { orificeLaw } from '@/lib/hydraulics/elements/orifice';
import type { Network } from '@/lib/hydraulics/network';
import { solve } from '@/lib/hydraulics/solve';
import { followTransient } from '@/lib/hydraulics/transient';

/** A vessel of 100 cm³ at 1.8 GPa that leaks k = 30 mL/min at 160 MPa, laminar, to nothing. */
const capacity = 100e-6 / 1.8e9;
const conductance = 30e-6 / 60 / 160e6;
const leaking: Network = {
  nodes: ['outside', 'vessel'],
  fixed: [0, undefined],
  branches: [
    { id: 'leak', from: 1, to: 0, law: clearanceLeakLaw({ clearance: conductance }, { density: 830, viscosity: 1 }) },
  ],
};
const capacities = Float64Array.of(0, capacity);
const start = Float64Array.of(0, 160e6);

// Analytic: p(t) = p₀ exp(−k t β / V). At the start it falls by 9 MPa/s, as the reference page's leak-down law computes.
test('a linear leak decays along its exponential', () => {
  const moments = followTransient(leaking, { capacities, start, until: 20, tolerance: 1e-6 });
  for (const { time, pressures } of moments) {
    const exact = 160e6 * Math.exp((-conductance * time) / capacity);
    // A thousand steps of 1e-6 each, at worst all one way.
    expect(Math.abs((pressures[1] ?? 0) / exact - 1)).toBeLessThan(1e-3);
  }
  expect((conductance * 160e6) / capacity / 1e6).toBeCloseTo(9, 6);
});

test('halving the step quarters the error: second order', () => {
  const errorWith = (fixedStep: number) => {
    const end = followTransient(leaking, { capacities, start, until: 4, fixedStep }).at(-1);
    return Math.abs((end?.pressures[1] ?? 0) - 160e6 * Math.exp((-conductance * 4) / capacity));
  };
  const orders = [0.1, 0.05, 0.025].map((step) => Math.log2(errorWith(step) / errorWith(step / 2)));
  for (const order of orders) expect(Math.abs(order - 2)).toBeLessThan(0.1);
});

test('a transient comes to rest at the steady state', () => {
  const fed: Network = {
    nodes: ['outside', 'supply', 'first', 'second'],
    fixed: [1e5, 3e5, undefined, undefined],
    branches: [
      { id: 'in', from: 1, to: 2, law: orificeLaw({ area: 1e-6, flowCoefficient: 0.62 }, 830) },
      { id: 'between', from: 2, to: 3, law: orificeLaw({ area: 2e-6, flowCoefficient: 0.62 }, 830) },
      { id: 'out', from: 3, to: 0, law: orificeLaw({ area: 1e-6, flowCoefficient: 0.62 }, 830) },
    ],
  };
  const begin = Float64Array.of(1e5, 3e5, 1e5, 1e5);
  const steady = solve(fed, { start: begin });
  const end = followTransient(fed, { capacities: Float64Array.of(0, 0, 1e-11, 1e-11), start: begin, until: 60 }).at(-1);
  for (const node of [2, 3]) {
    // The error allowed in one step, 1e-3 of the pressure, is all that can be left.
    expect(Math.abs((end?.pressures[node] ?? 0) - (steady.pressures[node] ?? 0))).toBeLessThan(300);
  }
});
