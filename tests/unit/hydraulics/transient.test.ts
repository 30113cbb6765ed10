import { expect, test } from 'vitest';
import type { Law } from '@/lib/hydraulics/elements/element';
import { SolveError } from '@/lib/hydraulics/errors';
import { solve } from '@/lib/hydraulics/solve';
import { linearStore } from '@/lib/hydraulics/store';
import { followTransient } from '@/lib/hydraulics/transient';
import { StepError, TooManyStepsError } from '@/lib/hydraulics/transient-error';
import type { Controller } from '@/lib/hydraulics/transient-options';
import { aNetwork, HIGH, LOW, orifice } from './tiny-network';

const CAPACITY = 1e-11;
const stores = [undefined, linearStore(CAPACITY), undefined];
const start = Float64Array.of(HIGH, LOW, LOW);

/** in → vessel → out */
function vessel(inlet: Law, outlet: Law = orifice(0.5)) {
  return aNetwork({ in: HIGH, vessel: undefined, out: LOW }, [
    ['in', 'vessel', inlet],
    ['vessel', 'out', outlet],
  ]);
}

/** A flow that nothing moves but a number. */
function pump(flow: () => number): Law {
  return (_inlet, _outlet, result) => {
    result.flow = flow();
    result.perInlet = result.perOutlet = 0;
  };
}

const shut = pump(() => 0);
const filling = { stores, start, until: 0.5 };

test('the first moment is the start with the fixed pressures in, the last is the end exactly', () => {
  const moments = followTransient(vessel(orifice(1)), { ...filling, start: Float64Array.of(0, LOW, 0) });
  expect(moments[0]).toEqual({ time: 0, pressures: start });
  expect(moments.at(-1)?.time).toBe(0.5);
});

test('steps keep to the longest and the times only grow', () => {
  const times = followTransient(vessel(orifice(1)), { ...filling, longestStep: 0.01 }, ({ time }) => time);
  const steps = times.slice(1).map((time, index) => time - (times[index] ?? 0));
  expect(Math.min(...steps)).toBeGreaterThan(0);
  expect(Math.max(...steps)).toBeLessThanOrEqual(0.01 * (1 + 1e-9));
  expect(times.length).toBeGreaterThan(50);
});

test('what is kept is what the caller makes of a moment, and nothing where it makes nothing of it', () => {
  const kept = followTransient(vessel(orifice(1)), { ...filling, until: 5, fixedStep: 0.5 }, (moment) =>
    moment.time > 2.6 ? [...moment.flows.slice(0, 2), ...moment.volumes] : undefined,
  );
  expect(kept).toHaveLength(5);
  // At rest the orifices of 1 and 0.5 mm² share 4 bar as 1 to 4: 0.8 and 3.2 bar.
  const [into = 0, out = 0, , held = 0] = kept.at(-1) ?? [];
  expect(into / out).toBeCloseTo(1, 4);
  expect(held / CAPACITY / (LOW + 3.2e5)).toBeCloseTo(1, 4);
});

test('a node without store follows at once', () => {
  const network = aNetwork({ in: HIGH, vessel: undefined, joint: undefined, out: LOW }, [
    ['in', 'vessel', orifice(1)],
    ['vessel', 'joint', orifice(1)],
    ['joint', 'out', orifice(1)],
  ]);
  const options = {
    ...filling,
    stores: [undefined, linearStore(CAPACITY)],
    start: Float64Array.of(HIGH, LOW, LOW, LOW),
  };
  for (const { pressures } of followTransient(network, options).slice(1)) {
    const [, tank = 0, joint = 0] = pressures;
    // Equal orifices: the joint stands half-way, whatever the vessel does.
    expect((joint - LOW) / ((tank - LOW) / 2)).toBeCloseTo(1, 6);
  }
});

// A pump of constant flow fills a vessel with nothing else on it: pressure rises by flow × time / capacity, exactly.
const FLOW = 1e-6;
const FLOW_OFF = 0.123;

test('a step ends at a break with the laws before it, and the next begins with those after it', () => {
  const switched = (time: number) =>
    vessel(
      pump(() => (time < FLOW_OFF ? FLOW : 0)),
      shut,
    );
  const moments = followTransient(switched, { ...filling, breaks: [0.7, FLOW_OFF, -1] });
  expect(moments.map(({ time }) => time)).toContain(FLOW_OFF);
  const risen = (moments.at(-1)?.pressures[1] ?? 0) - LOW;
  // Neither method errs on a straight line: what is left is the solver's, 1e-10 of the flow.
  expect(Math.abs(risen / ((FLOW * FLOW_OFF) / CAPACITY) - 1)).toBeLessThan(1e-9);
});

test('a break that is named twice is one', () => {
  const times = (breaks: number[]) =>
    followTransient(vessel(orifice(1)), { ...filling, breaks }).map(({ time }) => time);
  expect(times([0.2, 0.2 + 1e-16, 0.5 - 1e-12])).toEqual(times([0.2]));
});

test('a ramp is followed: the volume pumped is the integral of the flow', () => {
  const ramp = (time: number) =>
    vessel(
      pump(() => FLOW * time),
      shut,
    );
  const end = followTransient(ramp, { ...filling, tolerance: 1e-5 }).at(-1);
  // 1e-5 a step and a few dozen steps.
  expect(Math.abs(((end?.pressures[1] ?? 0) - LOW) / ((FLOW * 0.5 ** 2) / 2 / CAPACITY) - 1)).toBeLessThan(1e-3);
});

test('a controller is asked with the time a step ends and moved on once for every step that stands', () => {
  const asked: number[] = [];
  const moved: number[] = [];
  const controller: Controller = {
    demand(time) {
      asked.push(time);
      return time < 0.25 ? 0 : 1;
    },
    accept(time, pressures) {
      moved.push(time);
      expect(pressures).toHaveLength(3);
    },
  };
  const metered: Law = (_inlet, _outlet, result, demand) => {
    result.flow = demand * FLOW;
    result.perInlet = result.perOutlet = 0;
  };
  const moments = followTransient(vessel(metered), { ...filling, controller }, ({ time, demand }) => ({
    time,
    demand,
  }));
  expect(moved).toEqual(moments.slice(1).map(({ time }) => time));
  // The jump is not announced as a break, so steps over it are tried and taken back.
  expect(asked.length).toBeGreaterThan(moments.length);
  for (const { time, demand } of moments) expect(demand).toBe(time < 0.25 ? 0 : 1);
});

test('a step that cannot be solved is cut until it can', () => {
  // Twice what would take the vessel to no pressure within the first step, where the outlet knows no flow.
  const fragile: Law = (inlet, _outlet, result) => {
    result.flow = inlet > 0 ? FLOW : Number.NaN;
    result.perInlet = result.perOutlet = 0;
  };
  const emptyAt = (LOW * CAPACITY) / FLOW;
  const options = { stores, start, until: emptyAt * 0.9, firstStep: 2 * emptyAt, longestStep: 2 * emptyAt };
  const end = followTransient(vessel(shut, fragile), options).at(-1);
  expect(Math.abs((end?.pressures[1] ?? 0) / (0.1 * LOW) - 1)).toBeLessThan(1e-6);
  const error = thrownBy(() => followTransient(vessel(shut, fragile), { ...options, until: emptyAt * 1.1 }));
  expect(error).toBeInstanceOf(StepError);
  expect(error).toBeInstanceOf(SolveError);
  expect(error).toMatchObject({ failure: { code: 'not-converged', node: 'vessel' }, step: 1e-8 });
  expect((error as StepError).time / emptyAt).toBeCloseTo(1, 4);
});

test('a transient that takes too many steps says where it stands', () => {
  const error = thrownBy(() => followTransient(vessel(orifice(1)), { ...filling, longestStep: 1e-3, mostSteps: 100 }));
  expect(error).toBeInstanceOf(TooManyStepsError);
  expect(error).toMatchObject({ steps: 100 });
  expect((error as TooManyStepsError).time).toBeGreaterThan(0.05);
  expect((error as TooManyStepsError).time).toBeLessThan(0.1);
});

test('the same transient twice gives the same numbers', () => {
  const run = () => followTransient(vessel(orifice(1)), { ...filling, breaks: [0.1] });
  expect(run()).toEqual(run());
});

test('a long transient takes no more steps once it is at rest', () => {
  const moments = followTransient(vessel(orifice(1)), { ...filling, until: 600 });
  expect(moments.length).toBeLessThan(100);
  const rest = solve(vessel(orifice(1)), { start }).pressures[1] ?? 0;
  expect((moments.at(-1)?.pressures[1] ?? 0) / rest).toBeCloseTo(1, 3);
});

function thrownBy(run: () => void): unknown {
  try {
    run();
  } catch (error) {
    return error;
  }
  return undefined;
}
