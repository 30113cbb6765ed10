import { expect, test } from 'vitest';
import type { Law } from '@/lib/hydraulics/elements/element';
import { meteringValveLaw } from '@/lib/hydraulics/elements/metering-valve';
import { SolveError } from '@/lib/hydraulics/errors';
import { holdPressure } from '@/lib/hydraulics/hold-pressure';
import type { Network } from '@/lib/hydraulics/network';
import { trySolve } from '@/lib/hydraulics/solve';
import { aNetwork, DENSITY, flatStart, HIGH, LOW, orifice, orificeFlow } from './tiny-network';

const healthy = { area: 4e-6, flowCoefficient: 0.62, shutFraction: 0.01, freeFraction: 1, stuckOpenFraction: 0 };
const valve = meteringValveLaw(healthy, { density: DENSITY, viscosity: 2e-3 });

/** A supply, a valve that answers to demand, the held node, and what it feeds. */
function held(law: Law): Network {
  return aNetwork({ in: HIGH, rail: undefined, out: LOW }, [
    ['in', 'rail', law],
    ['rail', 'out', orifice(1)],
  ]);
}

function hold(law: Law, target: number) {
  const network = held(law);
  const { pressures, flows, demand } = holdPressure(network, { node: 1, target }, flatStart(network));
  return { rail: pressures[1] ?? Number.NaN, flows, demand };
}

test('the node gets its pressure with the demand that takes', () => {
  const { rail, flows, demand } = hold(valve, 3e5);
  expect(rail).toBeCloseTo(3e5, 3);
  expect(flows[0]).toBeCloseTo(orificeFlow(1, 2e5), 10);
  // The valve is open a quarter: 1 mm² of 4 at equal drops. A(u) = s + (1 − s)(0.2 u + 0.8 u²).
  expect(0.01 + 0.99 * (0.2 * demand + 0.8 * demand ** 2)).toBeCloseTo(0.25, 5);
});

test('a target out of reach leaves the valve wide open and the node short of it', () => {
  const { rail, demand } = hold(valve, 4.9e5);
  expect(demand).toBe(1);
  // 4 mm² ahead of 1 mm²: sixteen parts of seventeen of 4 bar.
  expect(rail / 1e5).toBeCloseTo(1 + (4 * 16) / 17, 5);
});

test('a target below what a shut valve still lets through leaves it shut and the node beyond it', () => {
  const leaky = meteringValveLaw({ ...healthy, shutFraction: 0.25 }, { density: DENSITY, viscosity: 2e-3 });
  const { rail, demand } = hold(leaky, 2e5);
  expect(demand).toBe(0);
  expect(rail / 1e5).toBeCloseTo(3, 5);
});

test('a target just within reach is held and not given up', () => {
  const most = 1e5 + (4e5 * 16) / 17;
  const { rail, demand } = hold(valve, most - 50);
  expect(rail).toBeCloseTo(most - 50, 2);
  expect(demand).toBeGreaterThan(0.99);
  expect(demand).toBeLessThanOrEqual(1);
});

/** Next to shut up to two thirds of the travel, then open within a hundredth of it. */
const sudden: Law = (inlet, outlet, result, demand) => {
  const rise = 1 / (1 + Math.exp(-(demand - 2 / 3) / 0.003));
  const open = 1e-6 + 4 * rise;
  orifice(1)(inlet, outlet, result, demand);
  result.perDemand = (4 * rise * (1 - rise) * result.flow) / 0.003;
  result.flow *= open;
  result.perInlet *= open;
  result.perOutlet *= open;
};

test('a valve that slopes cannot follow is found by bracketing', () => {
  const network = held(sudden);
  const coupled = trySolve(network, { start: flatStart(network), demand: 0.3, held: { node: 1, pressure: 3e5 } });
  expect(coupled).toHaveProperty('code');
  const { rail, demand } = hold(sudden, 3e5);
  expect(rail).toBeCloseTo(3e5, 2);
  // Open 1 mm²: the logistic at a quarter, ln 3 widths before its middle.
  expect(demand).toBeCloseTo(2 / 3 - 0.003 * Math.log(3), 6);
});

test('a network that has no steady state at any demand fails as typed', () => {
  const broken: Law = (_inlet, _outlet, result) => {
    result.flow = Number.NaN;
    result.perInlet = 1e-9;
    result.perOutlet = -1e-9;
  };
  expect(() => hold(broken, 3e5)).toThrow(SolveError);
});
