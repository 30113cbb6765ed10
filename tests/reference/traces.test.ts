import { describe, expect, test } from 'vitest';
import { appliesTo } from '@/lib/faults/apply-cause';
import { bulkModulus } from '@/lib/fluids/bulk-modulus';
import { followTransient } from '@/lib/hydraulics/transient';
import type { RigElement } from '@/lib/rig/element';
import { comeToRest, operatingPoint } from '@/lib/rig/operating-point';
import { elementOfKind, type Rig } from '@/lib/rig/rig';
import { rebound } from '@/lib/rig/traces/manoeuvre';
import { nodeOf, storesOf } from '@/lib/rig/traces/stores';
import { type Trace, type TraceId, type TraceLine, valueAt } from '@/lib/rig/traces/trace';
import { Traces } from '@/lib/rig/traces/traces';
import { catalogue, causeOf, fuelOf, mildDay } from '../support/bench-rig';
import { altered, brokenBy } from '../support/broken-rig';
import { compressed } from '../support/compressed';

const fuel = fuelOf(mildDay);
const rigs = [...catalogue.rigs.values()];

function traceOf(rig: Rig, id: TraceId): Trace {
  return new Traces(rig, mildDay, fuel).get(id);
}

function feature(rig: Rig, id: TraceId, name: string): number {
  return traceOf(rig, id).features[name] ?? Number.NaN;
}

function pointOf(rig: Rig, condition: 'key-on' | 'cranking' | 'full-load') {
  return operatingPoint(rig, mildDay, fuel, condition);
}

/** Faults in words, those that a rig can have. */
function faultsOf(rig: Rig, faults: readonly (readonly [string, number])[]) {
  return faults.filter(([cause]) => appliesTo(rig, causeOf(cause)));
}

function crankedFor(rig: Rig, seconds: number): Rig {
  return { ...rig, traces: { ...rig.traces, crank: { seconds } } };
}

const limits: readonly (readonly [string, number])[] = [
  ['no-fuel-fault', 0],
  ['lift-pump-supply-drop', 0.4],
  ['suction-air-leak', 0.4],
  ['relief-valve-leaking', 0.25],
  ['high-pressure-pump-worn', 0.9],
  ['injector-leakage-high', 0.9],
  ['rail-sensor-reads-high', 0.7],
];

describe.each(rigs)('$id: a steady state is the limit of the transient', (rig) => {
  test.each(faultsOf(rig, limits))(
    'the priming pump comes to rest where the operating point is, with %s at %d',
    (...fault) => {
      const broken = brokenBy(rig, fault);
      const { pressures, values } = pointOf(broken, 'key-on');
      const steady = (pressures[rig.primingNode] ?? Number.NaN) - (values.ambientPressure ?? Number.NaN);
      expect(feature(broken, 'prime', 'pressureReached') / steady).toBeCloseTo(1, 2.3 /* 0.5 % */);
    },
  );

  test.each(faultsOf(rig, limits))(
    'a long crank comes to rest where the operating point is, with %s at %d',
    (...fault) => {
      const broken = brokenBy(crankedFor(rig, 60), fault);
      const reached = feature(broken, 'crank', 'pressureReached');
      const steady = pointOf(broken, 'cranking').values.sensedRailPressure ?? Number.NaN;
      expect(Math.abs(reached / steady - 1)).toBeLessThan(0.01);
    },
  );
});

describe.each(rigs)('$id: decay against a closed form', (rig) => {
  const clearances = { ...rig, elements: rig.elements.map(onlyClearances) };
  const { seconds, stopSeconds } = rig.traces.decay;

  test('a rail that leaks through clearances alone falls as dp/dt = −K(p)·Q/V says', () => {
    const line = railLine(clearances);
    const expected = fallFrom(clearances, valueAt(line, stopSeconds), seconds);
    // To less than a third of where it began; then what each step is allowed, 1e-3 of the pressure, has added up to more.
    for (const share of [0.05, 0.1, 0.15, 0.2, 0.25])
      expectNear(valueAt(line, stopSeconds + share * seconds), expected(share * seconds), 0.01);
  });

  test('followed closely, it falls so to the end', () => {
    const { bound, solution, assumed } = comeToRest(clearances, mildDay, fuel, 'idle');
    const still = { engineRpm: 0, liftPumpVolts: 0, railCommandMpa: 0, injectedMm3PerShot: 0 };
    const { network } = rebound({ rig: clearances, setting: mildDay, fuel }, 'idle', assumed, still);
    const node = nodeOf(bound, elementOfKind(rig, 'rail').node);
    const gauge = (pressures: Float64Array) => (pressures[node] ?? Number.NaN) - bound.surroundings.ambient;
    const moments = followTransient(network, {
      stores: storesOf(clearances, bound, 0),
      start: solution.pressures,
      until: seconds,
      tolerance: 1e-6,
      longestStep: 0.05,
    });
    const expected = fallFrom(clearances, gauge(solution.pressures), seconds);
    const line = {
      id: 'sensed-rail-pressure' as const,
      times: moments.map(({ time }) => time),
      values: moments.map(({ pressures }) => gauge(pressures)),
    };
    // The return stands at a few kilopascals, not at ambient pressure, of the 300 that are left at the end.
    for (const share of [0.1, 0.25, 0.5, 0.75, 1])
      expectNear(valueAt(line, share * seconds), expected(share * seconds), 0.01);
  });
});

function expectNear(value: number, expected: number, share: number): void {
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);
}

function railLine(rig: Rig): TraceLine {
  const [line] = traceOf(rig, 'decay').lines;
  if (!line) throw new Error('The decay trace has no line');
  return line;
}

/** Shuts everything that leaves a rail but what seeps through clearances, which goes with pressure. */
function onlyClearances(element: RigElement): RigElement {
  switch (element.kind) {
    case 'relief-valve':
      return { ...element, seatLeakMm2: 1e-12 };
    case 'pressure-control-valve':
      return { ...element, seatLeakMm2: 1e-12, springMpa: 400 };
    case 'injector-return':
      return { ...element, controlMm3PerShot: 0 };
    default:
      return element;
  }
}

/** Gauge pressure by time, by fine fourth-order Runge–Kutta: Q = (Σ clearance) p/μ, at supply density, out of V. */
function fallFrom(rig: Rig, start: number, seconds: number): (time: number) => number {
  const { bound } = comeToRest(rig, mildDay, fuel, 'idle');
  const { viscosity } = bound.fluids.high;
  const { node, volumeCm3 } = elementOfKind(rig, 'rail');
  const clearance = rig.elements.reduce((sum, element) => sum + clearanceFrom(element, node), 0) * 1e-18;
  const temperature = highTemperature(rig);
  const atRest = bulkModulus(fuel.density15, temperature, bound.surroundings.ambient);
  const slope = (p: number) => {
    const modulus = bulkModulus(fuel.density15, temperature, p + bound.surroundings.ambient);
    return (-modulus * clearance * p) / (viscosity * volumeCm3 * 1e-6 * compressed(atRest, p));
  };
  const step = seconds / STEPS;
  const fall = [start];
  for (let n = 0; n < STEPS; n++) fall.push(rungeKutta(slope, fall[n] ?? Number.NaN, step));
  return (time) => fall[Math.round(time / step)] ?? Number.NaN;
}

/** A hundredth of what shortens the fastest fall here by a percent a step. */
const STEPS = 20_000;

function rungeKutta(slope: (p: number) => number, p: number, step: number): number {
  const k1 = slope(p);
  const k2 = slope(p + (step / 2) * k1);
  const k3 = slope(p + (step / 2) * k2);
  const k4 = slope(p + step * k3);
  return p + (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}

function clearanceFrom(element: RigElement, node: string): number {
  if (element.kind === 'clearance-leak' && element.from === node) return element.clearanceUm3;
  if (element.kind === 'injector-return' && element.from === node)
    return element.clearanceUm3 + element.oneClearanceUm3;
  return 0;
}

/** Where the high side's properties are taken: the mean of its nodes. */
function highTemperature(rig: Rig): number {
  return comeToRest(rig, mildDay, fuel, 'idle').assumed.high;
}

describe.each(rigs)('$id: tank vacuum against the gas law', (rig) => {
  test('under a sealed vent the air above the fuel expands as Boyle says', () => {
    const { id, volumeL } = elementOfKind(rig, 'tank');
    // Without depth the fuel has no head, and the air is at the node's own pressure.
    const sealed = altered(rig, id, { ventAreaMm2: 1e-9, depthM: 1e-6 });
    const [line] = traceOf(sealed, 'tank-vacuum').lines;
    const { engineRpm, injectedMm3PerShot } = rig.conditions['full-load'];
    // All that leaves a sound rig for good is what its injectors burn, and they get what is commanded.
    const drawn = injectedMm3PerShot * 1e-9 * (engineRpm / 60) * rig.shotsPerRevolution;
    const ullage = volumeL * 1e-3 * (1 - mildDay.tankLevel);
    const ambient = pointOf(rig, 'full-load').values.ambientPressure ?? Number.NaN;
    for (const minutes of [2, 5, rig.traces.tankVacuum.minutes]) {
      const expected = ambient * (1 - ullage / (ullage + drawn * minutes * 60));
      const vacuum = line ? valueAt(line, minutes * 60) : Number.NaN;
      expect(expected).toBeGreaterThan(500);
      // The integrator is allowed 1e-3 of the pressure in a step, and its line is straight between steps.
      expect(Math.abs(vacuum - expected)).toBeLessThan(0.01 * expected + 20);
    }
  });
});

/**
 * The quick estimate opens the metering valve fully, where the trace has a controller that opens it as far as the error asks.
 * Causes that drain the rail while it fills make the most of that; those here bear on priming and on the pump.
 */
const starters: readonly (readonly [string, number])[] = [
  ['no-fuel-fault', 0],
  ['injector-leakage-high', 0.3],
  ['high-pressure-pump-worn', 0.6],
  ['suction-air-leak', 0.4],
  ['lift-pump-weak', 0.9],
  ['inlet-check-valve-leaking', 0.5],
];

describe.each(rigs)('$id: cranking time against its quick estimate', (rig) => {
  const times = faultsOf(rig, starters).map(([cause, severity]) => {
    const broken = brokenBy(crankedFor(rig, rig.longestCrankSeconds), [cause, severity]);
    const { willStart, secondsToPrime = 0, secondsToEnable = 0 } = pointOf(broken, 'cranking').values;
    return {
      cause,
      willStart,
      quick: secondsToPrime + secondsToEnable,
      traced: feature(broken, 'crank', 'secondsToEnable'),
    };
  });

  test('each starts', () => {
    expect(times.map(({ cause, willStart }) => [cause, willStart])).toEqual(times.map(({ cause }) => [cause, 1]));
  });

  test('the two agree within 40 %', () => {
    for (const { cause, quick, traced } of times)
      expect({ cause, near: Math.abs(quick / traced - 1) < 0.4 }).toEqual({ cause, near: true });
  });

  test('both put the causes in the same order', () => {
    const order = (by: 'quick' | 'traced') => [...times].sort((a, b) => a[by] - b[by]).map(({ cause }) => cause);
    expect(order('quick')).toEqual(order('traced'));
  });
});

describe.each(rigs)('$id: a snap acceleration', (rig) => {
  const severities = [0, 0.3, 0.6, 0.9];

  test('falls the shorter of its command, the more the metering valve is restricted', () => {
    const shortfalls = severities.map((severity) =>
      feature(brokenBy(rig, ['metering-valve-restricted', severity]), 'snap', 'undershoot'),
    );
    expectRising(shortfalls, 1e6);
  });

  test('goes the further beyond its command, the more the metering valve stays open', () => {
    const excesses = severities.map((severity) =>
      feature(brokenBy(rig, ['metering-valve-stuck-open', severity]), 'snap', 'overshoot'),
    );
    expectRising(excesses, 1e6);
  });
});

function expectRising(values: readonly number[], by: number): void {
  values.slice(1).forEach((value, index) => {
    expect(value).toBeGreaterThan(values[index] ?? Number.NaN);
  });
  expect((values.at(-1) ?? Number.NaN) - (values[0] ?? Number.NaN)).toBeGreaterThan(by);
}
