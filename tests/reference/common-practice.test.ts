import { describe, expect, test } from 'vitest';
import { limitBounds } from '@/lib/checks/limit';
import type { OperatingPoint } from '@/lib/rig/operating-point';
import { elementOfKind } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { fromSi, toSi } from '@/lib/units';
import { aRig, catalogue, healthyPoints, mildDay, pointsWith } from '../support/bench-rig';

/*
 * What the trade says of this class of system, held against tern-13's content and its computed healthy state. Every fact
 * here is common practice, no source: figures are round, so a tenth either way counts as "about".
 */
const ABOUT = 0.1;

const rig = aRig();
const check = (id: string) => catalogue.checks.get(id);

/** A line of the limit sheet, in SI; a side without a bound is no number, so that nothing compares with it. */
function limit(id: string): { min: number; max: number } {
  const line = rig.limits.find((candidate) => candidate.id === id);
  return { min: Number.NaN, max: Number.NaN, ...(line && limitBounds(line)) };
}

/** A mild day, and the two ends of what a case may draw. */
const settings: readonly (readonly [string, Setting])[] = [
  ['a mild day', mildDay],
  ['a cold day with new filters and a full tank', settingAt(0)],
  ['a hot day up high with old filters and little fuel', settingAt(1)],
];

function settingAt(end: 0 | 1): Setting {
  const { airC, altitudeM, filterAge, tankLevel, hoursStanding, fuels } = rig.settings;
  return {
    airTemperature: toSi(airC[end], '°C'),
    altitude: altitudeM[end],
    fuel: fuels[end] ?? mildDay.fuel,
    supplyFilterAge: filterAge[end],
    mainFilterAge: filterAge[end],
    tankLevel: tankLevel[1 - end] ?? mildDay.tankLevel,
    hoursStanding: hoursStanding[end],
    cylinder: mildDay.cylinder,
  };
}

/** Gauge pressure at a node, psi. */
function psiAt({ pressures, values }: OperatingPoint, node: string): number {
  return fromSi((pressures[node] ?? Number.NaN) - (values.ambientPressure ?? Number.NaN), 'psi');
}

function relativeTo(value: number, figure: number): number {
  return Math.abs(value / figure - 1);
}

describe('common practice, no source: filtration', () => {
  test.each([
    ['supply-filter', 30],
    ['main-filter', 4],
  ])('%s holds back about %d µm', (id, rating) => {
    const filter = rig.elements.find((element) => element.id === id);
    expect(filter).toMatchObject({ kind: 'filter' });
    expect(relativeTo(filter?.kind === 'filter' ? filter.ratingUm : Number.NaN, rating)).toBeLessThanOrEqual(ABOUT);
  });

  test('no more than 10 psi may be lost across the main filter', () => {
    const lines = rig.limits.filter((line) => line.check === 'main-filter-drop');
    expect(lines.length).toBeGreaterThan(0);
    // 70 kPa, the round metric figure, is 10.15 psi.
    for (const line of lines) expect(fromSi(limitBounds(line).max ?? Number.NaN, 'psi')).toBeLessThanOrEqual(10.2);
  });

  test.each(settings)('a filter in service loses less than that on %s', (_day, setting) => {
    for (const point of Object.values(healthyPoints(setting))) {
      expect(psiAt(point, 'main-filter-inlet') - psiAt(point, 'main-filter-outlet')).toBeLessThan(10);
    }
  });

  test('a plugged inlet screen shows as low rail pressure, with good pressure ahead of it', () => {
    const point = pointsWith('inlet-screen-plugged', 0.8)['full-load'];
    expect(point.values.sensedRailPressure).toBeLessThan(limit('sensed-rail-pressure-full-load').min);
    expect(psiAt(point, 'main-filter-outlet')).toBeGreaterThan(165);
  });
});

describe('common practice, no source: priming', () => {
  test.each(settings)('the lift pump alone makes at least 10 psi at the main-filter inlet on %s', (_day, setting) => {
    const point = healthyPoints(setting)['key-on'];
    expect(point.values.engineSpeed).toBe(0);
    expect(psiAt(point, 'main-filter-inlet')).toBeGreaterThanOrEqual(10);
  });

  test('less than about 10 psi fails', () => {
    expect(relativeTo(fromSi(limit('prime-pressure-key-on').min, 'psi'), 10)).toBeLessThanOrEqual(ABOUT);
  });

  test.each(['suction-air-leak', 'lift-pump-weak'])('%s brings it below 10 psi', (cause) => {
    expect(psiAt(pointsWith(cause, 1)['key-on'], 'main-filter-inlet')).toBeLessThan(10);
  });

  test('it is taken with a 0–30 psi gauge at the main-filter inlet, and the pump runs for about two minutes', () => {
    const gauge = catalogue.gauges.get(check('prime-pressure')?.instruments[0] ?? '');
    expect(gauge).toMatchObject({ unit: 'psi', range: { min: 0, max: 30 } });
    const [port] = check('prime-pressure')?.ports['tern-13'] ?? [];
    expect(rig.ports.find(({ id }) => id === port)?.node).toBe('main-filter-inlet');
    expect(check('prime-pressure')?.text.en.how).toMatch(/about two minutes/);
  });

  test('nobody cranks while it is fitted', () => {
    expect(check('prime-pressure')?.conditions).toEqual(['key-on']);
    expect(check('prime-pressure')?.unwiseConditions).toContain('cranking');
    expect(check('prime-pressure')?.cautions).toContain('no-cranking-low-range');
  });

  test.each(settings)(
    'cranking takes the needle to its end, and the engine that starts destroys it, on %s',
    (_day, setting) => {
      const { cranking, idle } = healthyPoints(setting);
      expect(relativeTo(psiAt(cranking, 'main-filter-inlet'), 30)).toBeLessThanOrEqual(ABOUT);
      const gauge = catalogue.gauges.get('dial-0-30-psi');
      const survives = gauge?.overRange.kind === 'destroyed' ? gauge.range.max * gauge.overRange.ratio : 0;
      expect(psiAt(idle, 'main-filter-inlet')).toBeGreaterThan(survives);
    },
  );
});

describe('common practice, no source: gear pump', () => {
  test.each(settings)('it makes about 185 psi at idle on %s', (_day, setting) => {
    expect(relativeTo(psiAt(healthyPoints(setting).idle, 'gear-pump-outlet'), 185)).toBeLessThanOrEqual(ABOUT);
  });

  test('185 psi passes', () => {
    const { min, max } = limit('gear-pump-pressure-idle');
    expect([fromSi(min, 'psi') < 185, fromSi(max, 'psi') > 185]).toEqual([true, true]);
  });
});

describe('common practice, no source: rail pressure', () => {
  test.each(settings)('it is held by how much fuel is admitted, not by dumping it, on %s', (_day, setting) => {
    const points = healthyPoints(setting);
    for (const { values, flows } of [points.idle, points['high-idle'], points['full-load']]) {
      expect(values.sensedRailPressure).toBeCloseTo(values.commandedRailPressure ?? Number.NaN, -2);
      expect(values.meteringDemand).toBeGreaterThan(0);
      expect(values.meteringDemand).toBeLessThan(1);
      expect(flows['relief-valve']).toBeLessThan(0.01 * (flows['metering-valve'] ?? 0));
    }
    expect(points['full-load'].values.meteringDemand).toBeGreaterThan(points.idle.values.meteringDemand ?? 1);
  });

  test('a leak is made good by admitting more', () => {
    const [sound, leaking] = [healthyPoints().idle.values, pointsWith('injector-leakage-high', 0.5).idle.values];
    expect(leaking.sensedRailPressure).toBeCloseTo(sound.sensedRailPressure ?? Number.NaN, -2);
    expect(leaking.meteringDemand).toBeGreaterThan(1.1 * (sound.meteringDemand ?? 1));
  });

  test('the relief valve opens if metering sticks open', () => {
    const { values, flows } = pointsWith('metering-valve-stuck-open', 1).idle;
    expect(values.trueRailPressure).toBeGreaterThan(elementOfKind(rig, 'relief-valve').openMpa * 1e6);
    expect(flows['relief-valve']).toBeGreaterThan(100 * (healthyPoints().idle.flows['relief-valve'] ?? 1));
  });

  test('a relief valve is checked for leakage at its outlet', () => {
    const [port] = check('relief-valve-leak')?.ports['tern-13'] ?? [];
    expect(rig.ports.find(({ id }) => id === port)?.element).toBe('relief-valve');
    const leak = pointsWith('relief-valve-leaking', 0.5).cranking.flows['relief-valve'] ?? 0;
    expect(leak).toBeGreaterThan(limit('relief-valve-leak-cranking').max);
  });

  test('the sensor covers up to about 40,000 psi, and every running pressure lies between 6,000 and that', () => {
    expect(relativeTo(fromSi(elementOfKind(rig, 'rail-sensor').fullScaleMpa * 1e6, 'psi'), 40e3)).toBeLessThanOrEqual(
      ABOUT,
    );
    for (const condition of ['idle', 'high-idle', 'full-load'] as const) {
      const psi = fromSi(rig.conditions[condition].railCommandMpa * 1e6, 'psi');
      expect([psi > 6e3, psi < 40e3]).toEqual([true, true]);
    }
  });
});

describe('common practice, no source: sides', () => {
  test('of the engine are named looking forward from the flywheel', () => {
    expect(rig.text.en.about).toMatch(/looking forward from the flywheel/);
    const sided = rig.ports.filter(({ text }) => /\b(left|right) side\b/.test(text.en));
    expect(sided.length).toBeGreaterThan(0);
  });
});
