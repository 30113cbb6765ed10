import fc from 'fast-check';
import { expect, test } from 'vitest';
import { trueValue } from '@/lib/checks/quantity';
import { applyCause } from '@/lib/faults/apply-cause';
import { holdPressure } from '@/lib/hydraulics/hold-pressure';
import { solve } from '@/lib/hydraulics/solve';
import { buildNetwork } from '@/lib/rig/build-network';
import { conditionIds } from '@/lib/rig/condition';
import { type OperatingPoints, operatingPoints } from '@/lib/rig/operating-point';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { aRig, catalogue, fuelOf, mildDay, pointsWith } from '../support/bench-rig';

const settings: fc.Arbitrary<Setting> = fc.record({
  airTemperature: fc.double({ min: 258, max: 313, noNaN: true }),
  altitude: fc.double({ min: 0, max: 2500, noNaN: true }),
  fuel: fc.constantFrom('summer-grade', 'winter-grade'),
  supplyFilterAge: fc.double({ min: 0, max: 1, noNaN: true }),
  mainFilterAge: fc.double({ min: 0, max: 1, noNaN: true }),
  tankLevel: fc.double({ min: 0.05, max: 1, noNaN: true }),
});
const causes = fc.constantFrom(...catalogue.causes.values());
const severities = fc.double({ min: 0, max: 1, noNaN: true });
const conditions = fc.constantFrom(...conditionIds);

/**
 * Smaller flows are held to what this one would be: a double carries 1e5 Pa to 1e-11 Pa, and the steepest slope here is some
 * 1e-6 m³/s per Pa, so no balance can be told closer than about 3e-17 m³/s.
 */
const NEXT_TO_NOTHING = 3 * (1e-6 / 60);

test('what flows into a node flows out, to one part in a thousand million', () => {
  fc.assert(
    fc.property(settings, causes, severities, conditions, (setting, cause, severity, condition) => {
      const { network, control, start } = buildNetwork(
        applyCause(aRig(), cause, severity),
        setting,
        fuelOf(setting),
        condition,
      );
      const { flows } = control ? holdPressure(network, control, start) : solve(network, { start });
      network.nodes.forEach((node, index) => {
        if (network.fixed[index] !== undefined) return;
        const ins = network.branches.map(({ to }, branch) => (to === index ? (flows[branch] ?? 0) : 0));
        const outs = network.branches.map(({ from }, branch) => (from === index ? (flows[branch] ?? 0) : 0));
        const miss = Math.abs(sum(ins) - sum(outs));
        const through = Math.max((sum(ins.map(Math.abs)) + sum(outs.map(Math.abs))) / 2, NEXT_TO_NOTHING);
        expect({ node, miss: miss / through < 1e-9 }).toEqual({ node, miss: true });
      });
    }),
    { numRuns: 300 },
  );
});

test('severity 0 is exactly the healthy rig, whatever the cause', () => {
  const healthy = operatingPoints(aRig(), mildDay, fuelOf(mildDay));
  for (const cause of catalogue.causes.keys()) expect(pointsWith(cause, 0)).toEqual(healthy);
});

test('the operating point does not depend on where the search starts', () => {
  fc.assert(
    fc.property(
      causes,
      severities,
      conditions,
      fc.double({ min: 0.7, max: 1.3, noNaN: true }),
      (cause, s, id, shift) => {
        const { network, control, start } = buildNetwork(applyCause(aRig(), cause, s), mildDay, fuelOf(mildDay), id);
        const run = (from: Float64Array) =>
          control ? holdPressure(network, control, from) : solve(network, { start: from });
        const [usual, shifted] = [run(start), run(start.map((pressure) => pressure * shift))];
        network.nodes.forEach((_node, index) => {
          const [one, other] = [usual.pressures[index] ?? 0, shifted.pressures[index] ?? 0];
          // Two converged answers differ by the flow tolerance over the flattest slope; 1 Pa in 1e5 is a hundred times that.
          expect(Math.abs(one - other)).toBeLessThanOrEqual(1e-5 * Math.max(one, 1e5));
        });
      },
    ),
    { numRuns: 200 },
  );
});

const quantities = [...catalogue.checks.values()].flatMap((check) =>
  check.conditions.flatMap((condition) =>
    check.quantities.filter(({ measures }) => measures !== 'codes').map((quantity) => ({ check, condition, quantity })),
  ),
);

test('readings move continuously with severity', () => {
  for (const { id } of catalogue.causes.values()) {
    const swept = Array.from({ length: STEPS + 1 }, (_, step) => pointsWith(id, step / STEPS));
    for (const { condition, quantity } of quantities) {
      const at = (points: OperatingPoints) => trueValue(points[condition], quantity, 0);
      const values = swept.map(at);
      const span = Math.max(...values) - Math.min(...values);
      const worst = indexOfLargest(values.slice(1).map((value, step) => Math.abs(value - (values[step] ?? 0))));
      const left = jumpLeft(id, worst / STEPS, (worst + 1) / STEPS, at);
      // A jump stays however closely one looks; a steep reading shrinks. 1e-9 of the value is the solver's own noise.
      expect({
        id,
        quantity: quantity.id,
        condition,
        jumps: left > 0.02 * span + 1e-9 * Math.abs(values[0] ?? 0),
      }).toEqual({
        id,
        quantity: quantity.id,
        condition,
        jumps: false,
      });
    }
  }
}, 300_000);

const STEPS = 16;
const HALVINGS = 14;

/** What is left of the largest jump in an interval of severities when it is halved again and again. */
function jumpLeft(cause: string, from: number, to: number, at: (points: OperatingPoints) => number): number {
  let [low, high] = [from, to];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    const [first, second, third] = [low, middle, high].map((severity) => at(pointsWith(cause, severity)));
    if (Math.abs((second ?? 0) - (first ?? 0)) > Math.abs((third ?? 0) - (second ?? 0))) high = middle;
    else low = middle;
  }
  return Math.abs(at(pointsWith(cause, high)) - at(pointsWith(cause, low)));
}

function indexOfLargest(values: readonly number[]): number {
  return values.indexOf(Math.max(...values));
}

test('hostile parameters either solve or say which node will not balance', () => {
  const hostile: ((rig: Rig) => Rig)[] = [
    (rig) => altered(rig, 'main-filter', { plugging: 1e9 }),
    (rig) => altered(rig, 'inlet-screen', { areaMm2: 1e-6 }),
    (rig) => altered(rig, 'lift-pump', { condition: 0 }),
    (rig) => altered(rig, 'suction-joint', { areaMm2: 50 }),
    (rig) => altered(rig, 'fuel-tank', { ventAreaMm2: 1e-6 }),
    (rig) => altered(rig, 'gear-pump', { slipCoefficient: 1 }),
    (rig) => altered(rig, 'relief-valve', { seatLeakMm2: 5 }),
  ];
  for (const change of hostile) {
    for (const setting of [mildDay, { ...mildDay, airTemperature: 233.15, altitude: 4000, tankLevel: 0 }]) {
      for (const condition of conditionIds) {
        const { network, control, start } = buildNetwork(change(aRig()), setting, fuelOf(setting), condition);
        const outcome = attempt(() => (control ? holdPressure(network, control, start) : solve(network, { start })));
        if ('pressures' in outcome) expect(outcome.pressures.every(Number.isFinite)).toBe(true);
        else expect(outcome.failure.code).toMatch(/not-converged|singular/);
      }
    }
  }
});

function altered(rig: Rig, id: string, change: Record<string, number>): Rig {
  return { ...rig, elements: rig.elements.map((element) => (element.id === id ? { ...element, ...change } : element)) };
}

function attempt<T>(run: () => T): T | { failure: { code: string } } {
  try {
    return run();
  } catch (error) {
    return error as { failure: { code: string } };
  }
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
