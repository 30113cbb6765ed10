import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SolveError } from '@/lib/hydraulics/errors';
import { TooManyStepsError } from '@/lib/hydraulics/transient-error';
import { type SteadyConditionId, steadyConditionIds } from '@/lib/rig/condition';
import type { RigElement } from '@/lib/rig/element';
import { operatingPoint } from '@/lib/rig/operating-point';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { traceIds } from '@/lib/rig/traces/trace';
import { Traces } from '@/lib/rig/traces/traces';
import { ZERO_CELSIUS } from '@/lib/units';
import { catalogue, fuelOf, mildDay } from '../support/bench-rig';
import { altered } from '../support/broken-rig';

interface Scene {
  rig: Rig;
  setting: Setting;
}

type Hardship = (scene: Scene) => Scene;

/** What each kind of element is when nothing gets through it any more. */
const BLOCKED: Partial<Record<RigElement['kind'], readonly [parameter: string, factor: number]>> = {
  tank: ['ventAreaMm2', 1e-6],
  pipe: ['boreMm', 1e-6],
  filter: ['plugging', 1e9],
  orifice: ['areaMm2', 1e-6],
  'cooling-plate': ['areaMm2', 1e-6],
  'check-valve': ['areaMm2', 1e-6],
  'metering-valve': ['areaMm2', 1e-6],
};

const hardships = new Map<string, Hardship>([
  ['an engine that does not turn', inAllConditions({ engineRpm: 0 })],
  ['an engine that hardly turns', inAllConditions({ engineRpm: 60 })],
  ['a lift pump that is switched off', inAllConditions({ liftPumpVolts: 0 })],
  ['a dead battery', inAllConditions({ engineRpm: 0, liftPumpVolts: 0 })],
  ['a battery that just turns the engine', inAllConditions({ engineRpm: 60, liftPumpVolts: 0 })],
  ['no injection and no command', inAllConditions({ injectedMm3PerShot: 0, railCommandMpa: 0 })],
  ['an empty tank', inSetting({ tankLevel: 0 })],
  ['−40 °C', inSetting({ airTemperature: ZERO_CELSIUS - 40 })],
  ['−40 °C with summer fuel', inSetting({ airTemperature: ZERO_CELSIUS - 40, fuel: 'summer-grade' })],
  ['45 °C', inSetting({ airTemperature: ZERO_CELSIUS + 45 })],
  ['4,000 m', inSetting({ altitude: 4000 })],
  ['filters long overdue', inSetting({ supplyFilterAge: 1, mainFilterAge: 1 })],
  ['a week of standing', inSetting({ hoursStanding: 200 })],
  ['a joint wide open to the air', changing('suction-joint', { areaMm2: 50 })],
  ['gears worn away', changing('gear-pump', { slipCoefficient: 1 })],
  ['a relief valve stuck wide open', changing('relief-valve', { seatLeakMm2: 5 })],
  ['a high-pressure line off', changing('high-pressure-line', { areaMm2: 5 })],
]);

const rigs = [...catalogue.rigs.values()];
const blockages = new Map<string, Hardship>(
  [...new Set(rigs.flatMap(({ elements }) => elements.map(({ id }) => id)))].map((id) => [
    `${id} blocked`,
    blocking(id),
  ]),
);
const all = new Map([...hardships, ...blockages]);

function inAllConditions(change: Partial<Rig['conditions'][SteadyConditionId]>): Hardship {
  return ({ rig, setting }) => {
    const conditions = Object.fromEntries(
      Object.entries(rig.conditions).map(([id, condition]) => [id, { ...condition, ...change }]),
    ) as Rig['conditions'];
    return { rig: { ...rig, conditions }, setting };
  };
}

function inSetting(change: Partial<Setting>): Hardship {
  return ({ rig, setting }) => ({ rig, setting: { ...setting, ...change } });
}

function changing(id: string, change: Record<string, number>): Hardship {
  return ({ rig, setting }) => ({ rig: altered(rig, id, change), setting });
}

function blocking(id: string): Hardship {
  return ({ rig, setting }) => {
    const element = rig.elements.find((candidate) => candidate.id === id);
    const [parameter, factor] = (element && BLOCKED[element.kind]) ?? [];
    if (!element || !parameter || !factor) return { rig, setting };
    const healthy = (element as unknown as Record<string, number>)[parameter] ?? Number.NaN;
    return { rig: altered(rig, id, { [parameter]: healthy * factor }), setting };
  };
}

/** What is not a number among what was computed; nothing where the rig said in so many words why it has no answer. */
function unsound(compute: () => unknown): string[] {
  try {
    return notFinite(compute(), '');
  } catch (error) {
    if (!(error instanceof SolveError || error instanceof TooManyStepsError || error instanceof RangeError))
      throw error;
    return /\bNaN\b|undefined|Infinity|^$/.test(error.message) ? [error.message] : [];
  }
}

function notFinite(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => notFinite(part, `${path}.${key}`));
}

function tracesOf({ rig, setting }: Scene) {
  const traces = new Traces(rig, setting, fuelOf(setting));
  return traceIds.map((id) => [id, unsound(() => traces.get(id))] as const);
}

describe.each(rigs)('$id', (rig) => {
  test.each([...all])('%s solves in every condition, or says why not', (_name, hardship) => {
    const scene = hardship({ rig, setting: mildDay });
    for (const id of steadyConditionIds) {
      expect({ id, found: unsound(() => operatingPoint(scene.rig, scene.setting, fuelOf(scene.setting), id)) }).toEqual(
        {
          id,
          found: [],
        },
      );
    }
  });

  test('all of them together solve, or say why not', () => {
    const scene = [...all.values()].reduce((found, hardship) => hardship(found), { rig, setting: mildDay });
    for (const id of steadyConditionIds) {
      const found = unsound(() => operatingPoint(scene.rig, scene.setting, fuelOf(scene.setting), id));
      expect({ id, found }).toEqual({ id, found: [] });
    }
  });

  const several = fc.uniqueArray(fc.constantFrom(...all.keys()), { minLength: 2, maxLength: 5 });

  test('any few of them together solve, or say why not', () => {
    fc.assert(
      fc.property(several, fc.constantFrom(...steadyConditionIds), (names, id) => {
        const { rig: at, setting } = combined(rig, names);
        expect(unsound(() => operatingPoint(at, setting, fuelOf(setting), id))).toEqual([]);
      }),
      { numRuns: 400, endOnFailure: true },
    );
  });

  test('traces under any few of them end, or say why not', () => {
    fc.assert(
      fc.property(several, (names) => {
        for (const [id, found] of tracesOf(combined(rig, names))) expect({ id, found }).toEqual({ id, found: [] });
      }),
      { numRuns: 15, seed: 1, endOnFailure: true },
    );
  });
});

function combined(rig: Rig, names: readonly string[]): Scene {
  return names.reduce((scene, name) => all.get(name)?.(scene) ?? scene, { rig, setting: mildDay });
}
