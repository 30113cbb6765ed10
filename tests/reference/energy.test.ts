import { describe, expect, test } from 'vitest';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { FuelState } from '@/lib/fluids/fuel-state';
import { type SteadyConditionId, steadyConditionIds } from '@/lib/rig/condition';
import type { RigElement } from '@/lib/rig/element';
import { comeToRest, type OperatingPoint, operatingPoint } from '@/lib/rig/operating-point';
import { elementOfKind, findOfKind, type Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { ZERO_CELSIUS } from '@/lib/units';
import { aRig, catalogue, causeOf, fuelOf, mildDay } from '../support/bench-rig';
import { brokenBy } from '../support/broken-rig';

/*
 * The steady-flow energy equation (any thermodynamics text), written out here from a point's own flows, pressures and
 * temperatures: fuel carries h = c_p (T − T₀) + (1 − βT₀)(p − p₀)/ρ, with the suction side's properties; pumps add
 * Q Δp/η, the cooling plate its heat; lines and tank lose to the air; the tank warms.
 */
interface Books {
  point: OperatingPoint;
  fluid: FuelState;
  /** Where enthalpy is nothing: the air with what the engine gives off, at ambient pressure. */
  rest: number;
  enthalpyAt: (node: string) => number;
}

function booksOf(rig: Rig, setting: Setting, condition: SteadyConditionId): Books {
  const point = operatingPoint(rig, setting, fuelOf(setting), condition);
  const fluid = comeToRest(rig, setting, fuelOf(setting), condition).bound.fluids.suction;
  const rest = setting.airTemperature + rig.conditions[condition].restRiseK;
  const ambient = point.values.ambientPressure ?? Number.NaN;
  const perPascal = (1 - fluid.expansion * rest) / fluid.density;
  const enthalpyAt = (node: string) =>
    fluid.heatCapacity * (temperatureAt(point, node) - rest) + perPascal * (pressureAt(point, node) - ambient);
  return { point, fluid, rest, enthalpyAt };
}

function temperatureAt({ temperatures }: OperatingPoint, node: string): number {
  return temperatures[node] ?? Number.NaN;
}

function pressureAt({ pressures }: OperatingPoint, node: string): number {
  return pressures[node] ?? Number.NaN;
}

type Passing = Extract<RigElement, { from: string }>;

/** Elements that carry fuel, with its mass flow in their normal direction, kg/s. */
function carriers(rig: Rig, { point, fluid }: Books): [element: Passing, mass: number][] {
  return rig.elements.flatMap((element) =>
    'from' in element && element.kind !== 'tank'
      ? [[element, fluid.density * (point.flows[element.id] ?? 0)] as [Passing, number]]
      : [],
  );
}

/** Everything that brings or takes energy, W, what it brings counted positive. Together they must come to nothing. */
function powers(rig: Rig, setting: Setting, condition: SteadyConditionId): number[] {
  const books = booksOf(rig, setting, condition);
  return [
    ...works(rig, condition, books),
    ...crossings(rig, books),
    ...losses(rig, books),
    ...tank(rig, setting, condition, books),
  ];
}

function works(rig: Rig, condition: SteadyConditionId, { point }: Books): number[] {
  return rig.elements.flatMap((element) => {
    if (element.kind === 'cooling-plate') return rig.conditions[condition].engineRpm > 0 ? [element.heatW] : [];
    if (!('efficiency' in element)) return [];
    const rise = pressureAt(point, element.to) - pressureAt(point, element.from);
    return [(Math.max(0, point.flows[element.id] ?? 0) * Math.max(0, rise)) / element.efficiency];
  });
}

/** What leaves through the injectors and leaks; nothing but air comes in. */
function crossings(rig: Rig, books: Books): number[] {
  const fixed = new Set(rig.nodes.filter((node) => node.fixed).map(({ id }) => id));
  return carriers(rig, books).flatMap(([{ from, to }, mass]) => [
    ...(fixed.has(to) && mass > 0 ? [-mass * books.enthalpyAt(from)] : []),
    ...(fixed.has(from) && mass < 0 ? [mass * books.enthalpyAt(to)] : []),
  ]);
}

function losses(rig: Rig, { point, rest }: Books): number[] {
  const inTank = elementOfKind(rig, 'tank').to;
  const lines = rig.nodes.filter(({ id, fixed }) => !fixed && id !== inTank);
  return lines.map(({ id }) => -rig.lineLossWPerK * (temperatureAt(point, id) - rest));
}

/** Even an empty tank holds what its pick-up does not reach: 8 % of it, assumed in the model. */
const LEAST_LEVEL = 0.08;

/** What the tank gives up as it empties, what warms it over the minutes it has been run, and what it loses to the air. */
function tank(rig: Rig, { airTemperature, tankLevel }: Setting, condition: SteadyConditionId, books: Books): number[] {
  const { to, volumeL, levelShare, warmthK, coolingWPerK } = elementOfKind(rig, 'tank');
  const { minutes, tankRiseK } = rig.conditions[condition];
  const { density, heatCapacity } = books.fluid;
  const drawn = carriers(rig, books).reduce((sum, [element, mass]) => {
    return sum + (element.from === to ? mass : 0) - (element.to === to ? mass : 0);
  }, 0);
  const content = density * (volumeL / 1000) * Math.max(LEAST_LEVEL, tankLevel * levelShare) * heatCapacity;
  const above = temperatureAt(books.point, to) - (airTemperature + warmthK);
  const warming = (content * (above - tankRiseK)) / (minutes * 60);
  return [drawn * books.enthalpyAt(to), -warming, -coolingWPerK * above];
}

const rigs = [...catalogue.rigs.values()];
const settings: readonly Setting[] = [
  mildDay,
  { ...mildDay, airTemperature: ZERO_CELSIUS - 12, fuel: 'winter-grade', tankLevel: 0.95 },
  { ...mildDay, airTemperature: ZERO_CELSIUS + 38, altitude: 1600, tankLevel: 0.2, mainFilterAge: 1 },
];
const faults: readonly (readonly [string, number])[] = [
  ['no-fuel-fault', 0],
  ['injector-leakage-high', 0.7],
  ['cooling-plate-restricted', 0.9],
  ['high-pressure-line-leak', 0.6],
  ['tank-vent-blocked', 0.9],
  ['fuel-overheated', 0.8],
  ['fuel-level-low', 0.5],
];

describe.each(rigs)('$id, steady-flow energy equation', (rig) => {
  test.each(faults.filter(([cause]) => appliesTo(rig, causeOf(cause))))(
    'energy is conserved in every condition with %s at %d',
    (cause, severity) => {
      const broken = brokenBy(rig, [cause, severity]);
      for (const setting of settings) {
        for (const condition of steadyConditionIds) {
          const terms = powers(broken, setting, condition);
          const miss = Math.abs(terms.reduce((sum, term) => sum + term, 0));
          const through = terms.reduce((sum, term) => sum + Math.abs(term), 0);
          // Flows balance at each node to some 2e-10 of what passes it, and what misses carries its enthalpy away.
          expect({ condition, closes: miss <= 1e-9 * through }).toEqual({ condition, closes: true });
        }
      }
    },
  );

  test('the return is as warm as what is throttled into it, each stream by (1 − βT)Δp/(ρc_p)', () => {
    const books = booksOf({ ...rig, lineLossWPerK: NEXT_TO_NO_LOSS }, mildDay, 'full-load');
    const { point } = books;
    const { to } = elementOfKind(rig, 'injector-return');
    const streams = carriers(rig, books).filter(([element, mass]) => element.to === to && mass > 0);
    const mass = streams.reduce((sum, [, each]) => sum + each, 0);
    const mixed = streams.reduce((sum, [{ from }, each]) => {
      return (
        sum +
        (each / mass) *
          (temperatureAt(point, from) + perPascal(books) * (pressureAt(point, from) - pressureAt(point, to)))
      );
    }, 0);
    // A microkelvin: the loss that is left, 1e-9 W/K over some 0.01 kg/s.
    expect(temperatureAt(point, to)).toBeCloseTo(mixed, 6);
  });

  test('a high-pressure pump warms its fuel by Δp/(ρc_p)·(1/η − 1 + βT)', () => {
    const books = booksOf({ ...rig, lineLossWPerK: NEXT_TO_NO_LOSS }, mildDay, 'full-load');
    const { from, to, efficiency } = elementOfKind(rig, 'high-pressure-pump');
    const { density, heatCapacity, expansion } = books.fluid;
    const rise = pressureAt(books.point, to) - pressureAt(books.point, from);
    const expected = (rise / (density * heatCapacity)) * (1 / efficiency - 1 + expansion * books.rest);
    expect(temperatureAt(books.point, to) - temperatureAt(books.point, from)).toBeCloseTo(expected, 6);
  });

  test('the return is the hotter the harder the engine works', () => {
    const at = (condition: SteadyConditionId) => returnTemperature(rig, condition);
    expect(at('high-idle')).toBeGreaterThan(at('idle'));
    expect(at('full-load')).toBeGreaterThan(at('high-idle'));
  });

  test('nothing is colder than the air it stands in while the lift pump runs alone', () => {
    const { temperatures } = operatingPoint(rig, mildDay, fuelOf(mildDay), 'key-on');
    for (const kelvin of Object.values(temperatures))
      expect(kelvin).toBeGreaterThanOrEqual(mildDay.airTemperature - 1e-9);
  });
});

/** W/K; a model without any loss would leave a node that nothing passes without a temperature. */
const NEXT_TO_NO_LOSS = 1e-9;

/** Kelvin per pascal of throttling. */
function perPascal({ fluid, rest }: Books): number {
  return (1 - fluid.expansion * rest) / (fluid.density * fluid.heatCapacity);
}

function returnTemperature(rig: Rig, condition: SteadyConditionId): number {
  const { to } = elementOfKind(rig, 'injector-return');
  return temperatureAt(operatingPoint(rig, mildDay, fuelOf(mildDay), condition), to);
}

describe('throttling', () => {
  test('warms diesel by 0.446 K/MPa at 40 °C (reference page 1.5, computed: β 0.85e-3, ρ 822, c_p 2.0e3)', () => {
    const warm = { ...mildDay, airTemperature: ZERO_CELSIUS + 40 };
    // The page's round figures stand for a fuel of 840 kg/m³ at 15 °C; 3 % covers the grade's own density, β and c_p.
    expect((perPascal(booksOf(aRig(), warm, 'key-on')) * 1e6) / 0.446).toBeGreaterThan(0.97);
    expect((perPascal(booksOf(aRig(), warm, 'key-on')) * 1e6) / 0.446).toBeLessThan(1.03);
  });

  test('through a leaking relief valve alone leaves the return hotter than the rail by just that', () => {
    const rig = { ...withOnlyReliefLeak(aRig()), lineLossWPerK: NEXT_TO_NO_LOSS };
    const books = booksOf(rig, mildDay, 'idle');
    const drop = pressureAt(books.point, 'rail') - pressureAt(books.point, 'return-manifold');
    const rise = temperatureAt(books.point, 'return-manifold') - temperatureAt(books.point, 'rail');
    expect(drop).toBeGreaterThan(20e6);
    // What else still comes to the return is a millionth of the leak.
    expect(rise / (perPascal(books) * drop)).toBeCloseTo(1, 5);
  });
});

/** A rig whose relief valve leaks, and nothing else comes to its return. */
function withOnlyReliefLeak(rig: Rig): Rig {
  const leaking = brokenBy(rig, ['relief-valve-leaking', 0.5]);
  const shut = (element: RigElement): RigElement => {
    switch (element.id) {
      case 'pump-bleed':
        return { ...element, areaMm2: 1e-12 } as RigElement;
      case 'pump-leakage':
        return { ...element, clearanceUm3: 1e-9 } as RigElement;
      case 'injector-leakage':
        return { ...element, clearanceUm3: 1e-9, controlMm3PerShot: 0 } as RigElement;
      default:
        return element;
    }
  };
  return { ...leaking, elements: leaking.elements.map(shut) };
}

describe.each(rigs.flatMap((rig) => leaksOf(rig).map((cause) => [rig.id, cause] as const)))(
  'on %s, %s',
  (id, cause) => {
    const at = (severity: number) => returnTemperature(brokenBy(aRig(id), [cause, severity]), 'full-load');

    test('leaves the return as it is at severity 0', () => {
      expect(at(0)).toBe(returnTemperature(aRig(id), 'full-load'));
    });

    test('warms the return by more than 10 K at full load', () => {
      expect(at(0.5) - at(0)).toBeGreaterThan(10);
    });

    test('warms it the more, the worse it is, as long as the rail is held', () => {
      const held = [0, 0.1, 0.2, 0.3, 0.4].filter((severity) => isHeld(brokenBy(aRig(id), [cause, severity])));
      const temperatures = held.map(at);
      expect(held.length).toBeGreaterThanOrEqual(3);
      temperatures.slice(1).forEach((kelvin, index) => {
        expect(kelvin).toBeGreaterThan((temperatures[index] ?? Number.NaN) + 0.5);
      });
    });
  },
);

function leaksOf(rig: Rig): string[] {
  return findOfKind(rig, 'relief-valve')
    ? ['relief-valve-leaking', 'injector-leakage-high']
    : ['injector-leakage-high'];
}

function isHeld(rig: Rig): boolean {
  const { meteringDemand = 1 } = operatingPoint(rig, mildDay, fuelOf(mildDay), 'full-load').values;
  return meteringDemand < 1;
}
