import fc from 'fast-check';
import { expect, test } from 'vitest';
import { appliesTo, applyCause } from '@/lib/faults/apply-cause';
import { fitFuel, fuelState } from '@/lib/fluids/fuel-state';
import type { FlowAndSlopes, Law } from '@/lib/hydraulics/elements/element';
import { bindLaw } from '@/lib/rig/bind-law';
import { elementSchema, type RigElement } from '@/lib/rig/element';
import type { Rig } from '@/lib/rig/rig';
import type { Surroundings } from '@/lib/rig/surroundings';
import { catalogue, fuelOf, mildDay } from '../support/bench-rig';

/*
 * The promise that makes a network's balance unique, held against every element of every rig, healthy and broken:
 * flow never falls when the inlet rises, never rises when the outlet rises, and the slopes are the flow's own.
 */
const warm = fuelState(fitFuel(fuelOf(mildDay)), 330);

const at: Surroundings = {
  ambient: 98e3,
  airDensity: 1.17,
  engineSpeed: 25,
  shotsPerRevolution: 3,
  liftPumpVolts: 24,
  railCommand: 120e6,
  injected: 150e-9,
  sensor: { gain: 0.95, offset: 9e6, believed: true },
  injectionEnable: 20e6,
  tankLevel: 0.6,
  minutes: 10,
};

/** No rig has to have every kind of element. */
const spare: RigElement[] = [
  {
    kind: 'pressure-control-valve',
    id: 'spare-control-valve',
    from: 'rail',
    to: 'return-manifold',
    holdShare: 1.04,
    springMpa: 8,
    overrideMpaPerLmin: 3,
    seatLeakMm2: 1e-5,
    flowCoefficient: 0.7,
    source: { kind: 'assumed', because: 'An element for tests' },
    text: { en: 'Spare' },
  },
];

type Bound = [name: string, element: RigElement, law: Law];

const bound = [...catalogue.rigs.values()].flatMap((rig) => {
  const broken = brokenEveryWay(rig);
  const moved = broken.elements.filter((element) => !rig.elements.includes(element));
  return [...bind(`${rig.id}: `, rig.elements), ...bind(`${rig.id}, broken: `, moved)];
});
bound.push(...bind('', spare));

function brokenEveryWay(rig: Rig): Rig {
  const causes = [...catalogue.causes.values()].filter((cause) => appliesTo(rig, cause));
  return causes.reduce((found, cause) => applyCause(found, cause, 0.6), rig);
}

function bind(before: string, elements: readonly RigElement[]): Bound[] {
  return elements.flatMap((element): Bound[] => {
    const law = bindLaw(element, warm, at);
    return law ? [[before + element.id, element, law]] : [];
  });
}

/** High-pressure elements see rail pressures; the others what a low-pressure circuit can offer, vacuum included. */
function pressures(element: RigElement) {
  const high = 'from' in element && element.from.startsWith('rail');
  return fc.double({ min: high ? 1e5 : 2e4, max: high ? 250e6 : 1.8e6, noNaN: true });
}

function evaluate(law: Law, inlet: number, outlet: number, demand = 0.4): FlowAndSlopes {
  const result = { flow: 0, perInlet: 0, perOutlet: 0, perDemand: 0 };
  law(inlet, outlet, result, demand);
  return result;
}

test('the rigs bind an element of every kind that passes flow', () => {
  const kinds = elementSchema.options.map(({ shape }) => shape.kind.value);
  const passing = kinds.filter((kind) => kind !== 'rail' && kind !== 'rail-sensor');
  expect(new Set(bound.map(([, { kind }]) => kind))).toEqual(new Set(passing));
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
      // A law subtracts its ends, so that the greater of them says how fine a step is still a step.
      const scale = Math.max(p, q);
      expectSlope(perInlet, (h) => evaluate(law, p + h, q).flow, scale);
      expectSlope(perOutlet, (h) => evaluate(law, p, q + h).flow, scale);
    }),
    { endOnFailure: true },
  );
});

test('the metering valve opens with demand at the slope it reports', () => {
  const law = bound.find(([, { kind }]) => kind === 'metering-valve')?.[2];
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
