import { expect, test } from 'vitest';
import { clearanceLeakLaw } from '@/lib/hydraulics/elements/clearance-leak';
import type { Law } from '@/lib/hydraulics/elements/element';
import { orificeLaw } from '@/lib/hydraulics/elements/orifice';
import type { Network } from '@/lib/hydraulics/network';
import { solve } from '@/lib/hydraulics/solve';
import { gasStore, linearStore, type Store } from '@/lib/hydraulics/store';
import { followTransient } from '@/lib/hydraulics/transient';

// Closed forms below are worked out by hand from the differential equation that stands beside each.

const HIGH = 160e6;
const CAPACITY = 100e-6 / 1.8e9;
/** 30 mL/min at 160 MPa, laminar. */
const LEAK = 30e-6 / 60 / HIGH;
const leak = (conductance: number) => clearanceLeakLaw({ clearance: conductance }, { density: 830, viscosity: 1 });

/** A vessel that empties through one law to where there is no pressure. */
function emptying(law: Law): Network {
  return {
    nodes: ['outside', 'vessel'],
    fixed: [0, undefined],
    branches: [{ id: 'way out', from: 1, to: 0, law }],
  };
}

function vesselAfter(law: Law, store: Store, from: number, until: number, step: { fixedStep: number }): number {
  const options = { stores: [undefined, store], start: Float64Array.of(0, from), until, ...step };
  return followTransient(emptying(law), options).at(-1)?.pressures[1] ?? Number.NaN;
}

// C p′ = −k p: p = p₀ exp(−k t/C). At the start it falls by 9 MPa/s, as the reference page's leak-down law computes.
test('a linear leak decays along its exponential', () => {
  const options = { stores: [undefined, linearStore(CAPACITY)], start: Float64Array.of(0, HIGH), until: 20 };
  for (const { time, pressures } of followTransient(emptying(leak(LEAK)), { ...options, tolerance: 1e-6 })) {
    const exact = HIGH * Math.exp((-LEAK * time) / CAPACITY);
    // A thousand steps of 1e-6 each, at worst all one way.
    expect(Math.abs((pressures[1] ?? 0) / exact - 1)).toBeLessThan(1e-3);
  }
  expect((LEAK * HIGH) / CAPACITY / 1e6).toBeCloseTo(9, 6);
});

const rootFlow = 1e-7 * 0.62 * Math.sqrt(2 / 830);
const nonlinear = [
  {
    // C p′ = −a √p: √p = √p₀ − a t/2C. The orifice's bend at 100 Pa is (100/p)²/4, below 1e-10 here.
    problem: 'an orifice empties a linear store',
    law: orificeLaw({ area: 1e-7, flowCoefficient: 0.62 }, 830),
    store: linearStore(CAPACITY),
    from: HIGH,
    until: 0.02,
    exact: (time: number) => (Math.sqrt(HIGH) - (rootFlow * time) / (2 * CAPACITY)) ** 2,
  },
  {
    // S = V (1 − p₀/p), so V p₀ p′/p² = −k p: 1/p² = 1/p₀² + 2 k t/(V p₀).
    problem: 'a linear leak empties an isothermal gas pocket',
    law: leak(1e-10),
    store: gasStore({ gas: 1e-3, ambient: 4e5, polytropic: 1 }),
    from: 4e5,
    until: 60,
    exact: (time: number) => (4e5 ** -2 + (2 * 1e-10 * time) / (1e-3 * 4e5)) ** -0.5,
  },
  {
    // S = V (1 − (p₀/p)^(1/n)), so (V/n) p₀^(1/n) p^(−1/n−1) p′ = −k p: p^(−1−1/n) = p₀^(−1−1/n) + (n + 1) k t/(V p₀^(1/n)).
    problem: 'a linear leak empties an adiabatic gas pocket',
    law: leak(1e-10),
    store: gasStore({ gas: 1e-3, ambient: 4e5, polytropic: 1.4 }),
    from: 4e5,
    until: 60,
    exact: (time: number) => (4e5 ** (-2.4 / 1.4) + (2.4 * 1e-10 * time) / (1e-3 * 4e5 ** (1 / 1.4))) ** (-1.4 / 2.4),
  },
];

test.each(nonlinear)('$problem as its closed form says, to second order in the step', ({ exact, ...vessel }) => {
  const { law, store, from, until } = vessel;
  const errorWith = (fixedStep: number) => Math.abs(vesselAfter(law, store, from, until, { fixedStep }) - exact(until));
  const orders = [20, 40, 80].map((steps) => Math.log2(errorWith(until / steps) / errorWith(until / steps / 2)));
  for (const order of orders) expect(Math.abs(order - 2)).toBeLessThan(0.15);
  // Second order with 160 steps: a constant near 1 leaves (1/160)².
  expect(errorWith(until / 160) / from).toBeLessThan(1e-4);
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
  const start = Float64Array.of(1e5, 3e5, 1e5, 1e5);
  const steady = solve(fed, { start });
  const stores = [undefined, undefined, linearStore(1e-11), gasStore({ gas: 1e-6, ambient: 1e5, polytropic: 1 })];
  const end = followTransient(fed, { stores, start, until: 60 }).at(-1);
  for (const node of [2, 3]) {
    // The error allowed in one step, 1e-3 of the pressure, is all that can be left.
    expect(Math.abs((end?.pressures[node] ?? 0) - (steady.pressures[node] ?? 0))).toBeLessThan(300);
  }
});

/** Time constants of 1 s and 1 ns: a vessel that leaks, and a stub of a line on it that leaks a tenth of what feeds it. */
const stiffPair: Network = {
  nodes: ['outside', 'vessel', 'stub'],
  fixed: [0, undefined, undefined],
  branches: [
    { id: 'vessel leak', from: 1, to: 0, law: leak(1e-11) },
    { id: 'between', from: 1, to: 2, law: leak(1e-12) },
    { id: 'stub leak', from: 2, to: 0, law: leak(1e-13) },
  ],
};
const stiff = { stores: [undefined, linearStore(1e-11), linearStore(1e-21)], start: Float64Array.of(0, 1e6, 9e6) };

test('a fast node falls into line at once and does not ring', () => {
  const moments = followTransient(stiffPair, { ...stiff, until: 5, fixedStep: 0.05 }).slice(1);
  for (const { pressures } of moments) {
    const [, vessel = 0, stub = 0] = pressures;
    // Slow and fast together: the stub stands at 10/11 of the vessel, behind by one part in 1e9. What backward Euler leaves of
    // the start, 8 MPa, is 1e-9/0.05 of it.
    expect(Math.abs(stub / ((vessel * 10) / 11) - 1)).toBeLessThan(1e-6);
  }
});

test('stiffness costs no steps', () => {
  const moments = followTransient(stiffPair, { ...stiff, until: 5 });
  // Five time constants of the vessel at 1e-3 a step take some dozens; those of the stub would be five thousand million.
  expect(moments.length).toBeLessThan(100);
});
