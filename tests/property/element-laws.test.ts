import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyCause } from '@/lib/faults/apply-cause';
import { fitFuel, fuelState } from '@/lib/fluids/fuel-state';
import type { FlowAndSlopes, Law } from '@/lib/hydraulics/elements/element';
import { bindLaw, type Surroundings } from '@/lib/rig/bind-law';
import type { RigElement } from '@/lib/rig/element';
import { aRig, catalogue, causeOf, fuelOf, mildDay } from '../support/bench-rig';

/*
 * The promise that makes a network's balance unique, held against every element of every rig, healthy and broken:
 * flow never falls when the inlet rises, never rises when the outlet rises, and the slopes are the flow's own.
 */
const prepared = fitFuel(fuelOf(mildDay));

const at: Surroundings = {
  ambient: 98e3,
  airDensity: 1.17,
  cool: fuelState(prepared, 310),
  hot: fuelState(prepared, 350),
  engineSpeed: 25,
  shotsPerRevolution: 3,
  liftPumpVolts: 24,
  railCommand: 120e6,
  injected: 150e-9,
  sensorOffset: 9e6,
  injectionEnable: 20e6,
  tankLevel: 0.6,
};

const broken = [...catalogue.causes.values()].reduce((rig, { id }) => applyCause(rig, causeOf(id), 0.6), aRig());
const bound = [...aRig().elements, ...broken.elements.filter((element) => !aRig().elements.includes(element))].flatMap(
  (element): [string, RigElement, Law][] => {
    const law = bindLaw(element, at);
    return law ? [[element.id, element, law]] : [];
  },
);

/** High-pressure elements see rail pressures; the others what a low-pressure circuit can offer, vacuum included. */
function pressures(element: RigElement) {
  const high = 'from' in element && element.from === 'rail';
  return fc.double({ min: high ? 1e5 : 2e4, max: high ? 250e6 : 1.8e6, noNaN: true });
}

function evaluate(law: Law, inlet: number, outlet: number, demand = 0.4): FlowAndSlopes {
  const result = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
  law(inlet, outlet, result, demand);
  return result;
}

test('the rig binds an element of every kind that passes flow', () => {
  expect(new Set(bound.map(([, { kind }]) => kind)).size).toBe(16);
});

test.each(bound)('%s never passes less for more inlet or more for more outlet pressure', (_id, element, law) => {
  fc.assert(
    fc.property(pressures(element), pressures(element), fc.double({ min: 1, max: 1e6, noNaN: true }), (p, q, rise) => {
      const before = evaluate(law, p, q).flow;
      const slack = 1e-12 * Math.abs(before);
      expect(evaluate(law, p + rise, q).flow).toBeGreaterThanOrEqual(before - slack);
      expect(evaluate(law, p, q + rise).flow).toBeLessThanOrEqual(before + slack);
    }),
    { endOnFailure: true },
  );
});

test.each(bound)('%s reports slopes of the right sign that are its own', (_id, element, law) => {
  fc.assert(
    fc.property(pressures(element), pressures(element), (p, q) => {
      const { perInlet, perOutlet } = evaluate(law, p, q);
      expect(perInlet).toBeGreaterThanOrEqual(0);
      expect(perOutlet).toBeLessThanOrEqual(0);
      expectSlope(perInlet, (h) => evaluate(law, p + h, q).flow, p);
      expectSlope(perOutlet, (h) => evaluate(law, p, q + h).flow, q);
    }),
    { endOnFailure: true },
  );
});

test('the metering valve opens with demand at the slope it reports', () => {
  const law = bound.find(([id]) => id === 'metering-valve')?.[2];
  if (!law) throw new Error('no metering valve');
  fc.assert(
    fc.property(fc.double({ min: -0.5, max: 1.5, noNaN: true }), (demand) => {
      const { perDemand } = evaluate(law, 1.2e6, 1e5, demand);
      expect(perDemand).toBeGreaterThan(0);
      // Off the corner at demand 0, where the opening goes over into its tail.
      if (Math.abs(demand) > 1e-4) expectSlope(perDemand, (h) => evaluate(law, 1.2e6, 1e5, demand + h).flow, 1);
    }),
  );
});

/**
 * The reported slope lies between the two one-sided differences, whichever side of a corner they stand on (an injector at
 * its longest opening). The slack is what rounding of the flow leaves over one step.
 */
function expectSlope(reported: number, flow: (h: number) => number, scale: number) {
  const h = 1e-9 * scale;
  const [left, here, right] = [flow(-h), flow(0), flow(h)];
  const [before, after] = [(here - left) / h, (right - here) / h];
  const rounding = (8 * Number.EPSILON * Math.max(Math.abs(left), Math.abs(here), Math.abs(right))) / h;
  const bend = Math.abs(after - before);
  const slack = rounding + bend + 1e-4 * Math.abs(reported);
  expect(reported).toBeGreaterThanOrEqual(Math.min(before, after) - slack);
  expect(reported).toBeLessThanOrEqual(Math.max(before, after) + slack);
}
