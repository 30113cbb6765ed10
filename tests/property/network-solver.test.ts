import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '@/lib/checks/check';
import { trueValue } from '@/lib/checks/quantity';
import { appliesTo, applyCause } from '@/lib/faults/apply-cause';
import type { Cause } from '@/lib/faults/cause';
import { holdPressure } from '@/lib/hydraulics/hold-pressure';
import { solve } from '@/lib/hydraulics/solve';
import { buildNetwork } from '@/lib/rig/build-network';
import { isSteady, type SteadyConditionId, steadyConditionIds } from '@/lib/rig/condition';
import { firstTemperatures } from '@/lib/rig/heat-balance';
import { type OperatingPoint, operatingPoint } from '@/lib/rig/operating-point';
import { elementOfKind, type Rig } from '@/lib/rig/rig';
import { sensorLine } from '@/lib/rig/sensor-line';
import { Traces } from '@/lib/rig/traces/traces';
import { catalogue, fuelOf, healthyPoints, mildDay, pointsWith } from '../support/bench-rig';

const rigs = [...catalogue.rigs.values()];
const fuel = fuelOf(mildDay);

function causesOf(rig: Rig): Cause[] {
  return [...catalogue.causes.values()].filter((cause) => appliesTo(rig, cause));
}

describe.each(rigs)('$id', (rig) => {
  test('severity 0 is exactly the healthy rig, whatever the cause', () => {
    const healthy = healthyPoints(mildDay, rig);
    for (const { id } of causesOf(rig)) expect(pointsWith(id, 0, mildDay, rig)).toEqual(healthy);
  });

  test('the operating point does not depend on where the search starts', () => {
    const causes = fc.constantFrom(...causesOf(rig));
    const shifts = fc.double({ min: 0.7, max: 1.3, noNaN: true });
    const severities = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(causes, severities, fc.constantFrom(...steadyConditionIds), shifts, (cause, s, id, shift) => {
        const severity = cause.severity.min === cause.severity.max ? cause.severity.max : s;
        const [usual, shifted] = [1, shift].map((factor) =>
          pressuresFrom(applyCause(rig, cause, severity), id, factor),
        );
        expectSame(usual, shifted);
      }),
      { numRuns: 150, endOnFailure: true },
    );
  });

  test('readings move continuously with severity', () => {
    // A circuit is open or it is not.
    for (const cause of causesOf(rig).filter(({ severity }) => severity.min < severity.max))
      expect({ cause: cause.id, jumps: jumpsOf(rig, cause) }).toMatchObject({ jumps: [] });
  }, 300_000);
});

test('a start from which a full step goes round in circles is left by way of the other end of the demand', () => {
  const rig = rigs.find(({ id }) => id === 'plover-7');
  const cause = catalogue.causes.get('lift-pump-open-circuit');
  if (!rig || !cause) throw new Error('No such rig or cause');
  const broken = applyCause(rig, cause, 1);
  expectSame(pressuresFrom(broken, 'cranking', 1), pressuresFrom(broken, 'cranking', 1.0388252486217253));
});

/** Two converged answers differ by the flow tolerance over the flattest slope; 1 Pa in 1e5 is a hundred times that. */
function expectSame(usual: Float64Array | undefined, shifted: Float64Array | undefined): void {
  expect(shifted?.length).toBe(usual?.length);
  usual?.forEach((one, index) => {
    expect(Math.abs(one - (shifted?.[index] ?? Number.NaN))).toBeLessThanOrEqual(1e-5 * Math.max(one, 1e5));
  });
}

function pressuresFrom(rig: Rig, condition: SteadyConditionId, factor: number): Float64Array {
  const temperatures = firstTemperatures(rig, mildDay, condition);
  const { network, control, restDemand, start } = buildNetwork(rig, mildDay, fuel, condition, temperatures);
  const from = start.map((pressure) => pressure * factor);
  const solution = control ? holdPressure(network, control, from) : solve(network, { start: from, demand: restDemand });
  return solution.pressures;
}

const STEPS = 16;
const HALVINGS = 14;
/** Temperatures settle to 0.05 K, some 0.1 % of a viscosity; where one pass more is taken, readings move by as much. */
const SETTLING = 2e-3;
/**
 * What else is allowed, by value: a pump that starves hardly answers its valve, so that the demand which holds the rail moves by
 * a tenth for those 0.05 K; and next to no flow counts as none, whatever gas was in it.
 */
const STEEP: Readonly<Record<string, number>> = { meteringDemand: 0.1, freeGasFraction: 0.005 };

/**
 * Where flow and heat feed each other, a rig has two states to settle at and jumps from one to the other: a rail that starves
 * throttles less heat back to the tank, and cooler fuel takes more to get through a plugged filter.
 */
const FOLDS: ReadonlySet<string> = new Set(['tern-13 supply-filter-plugged full-load']);

/** Readings that jump somewhere between severity 0 and 1. A jump stays however closely one looks; a steep reading shrinks. */
function jumpsOf(rig: Rig, cause: Cause): string[] {
  const sweep = new Sweep(rig, cause);
  const readings = steadyReadings(rig).filter(({ condition }) => !FOLDS.has(`${rig.id} ${cause.id} ${condition}`));
  return readings.flatMap(({ check, condition, quantity }) => {
    const at = (severity: number) => sweep.read(severity, condition, quantity);
    const values = Array.from({ length: STEPS + 1 }, (_, step) => at(step / STEPS));
    const span = Math.max(...values) - Math.min(...values);
    const steep = (quantity.of.kind === 'value' && STEEP[quantity.of.key]) || 0;
    const allowed = 0.02 * span + SETTLING * Math.max(...values.map(Math.abs)) + steep;
    const jump = values.slice(1).some((_value, step) => {
      const ends = [step / STEPS, (step + 1) / STEPS] as const;
      return sweep.believes(ends[0]) === sweep.believes(ends[1]) && stays(at, ends, allowed);
    });
    return jump ? [`${check} ${quantity.id} at ${condition}`] : [];
  });
}

function steadyReadings(rig: Rig) {
  return [...catalogue.checks.values()].flatMap((check) =>
    check.ports[rig.id]
      ? check.conditions
          .filter(isSteady)
          .flatMap((condition) =>
            check.quantities
              .filter(({ of }) => of.kind !== 'trace' && of.kind !== 'code-count')
              .map((quantity) => ({ check: check.id, condition, quantity: withoutGrades(quantity) })),
          )
      : [],
  );
}

/** An eye tells steps apart; what it looks at moves smoothly. */
function withoutGrades({ grades: _grades, ...quantity }: Quantity): Quantity {
  return quantity;
}

/** Whether a gap between two severities is still there when the interval is halved again and again. */
function stays(at: (severity: number) => number, [from, to]: readonly [number, number], allowed: number): boolean {
  let [low, high] = [from, to];
  for (let halving = 0; halving < HALVINGS && Math.abs(at(high) - at(low)) > allowed; halving++) {
    const middle = (low + high) / 2;
    if (Math.abs(at(middle) - at(low)) > Math.abs(at(high) - at(middle))) high = middle;
    else low = middle;
  }
  return Math.abs(at(high) - at(low)) > allowed;
}

/** Operating points of a rig with one cause, by severity, each solved once. */
class Sweep {
  private readonly known = new Map<string, OperatingPoint>();

  constructor(
    private readonly rig: Rig,
    private readonly cause: Cause,
  ) {}

  read(severity: number, condition: SteadyConditionId, quantity: Quantity): number {
    const key = `${condition} ${severity}`;
    const point = this.known.get(key) ?? operatingPoint(this.at(severity), mildDay, fuel, condition);
    this.known.set(key, point);
    const points = { [condition]: point } as Record<SteadyConditionId, OperatingPoint>;
    return trueValue({ points, traces: new Traces(this.rig, mildDay, fuel) }, condition, quantity, 0);
  }

  /** Where the control unit stops believing its sensor it stops controlling, from one severity to the next. */
  believes(severity: number): boolean {
    return sensorLine(elementOfKind(this.at(severity), 'rail-sensor')).believed;
  }

  private at(severity: number): Rig {
    return applyCause(this.rig, this.cause, severity);
  }
}
