import { expect } from 'vitest';
import type { OperatingPoint } from '@/lib/rig/operating-point';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { fromSi, toSi } from '@/lib/units';
import { mildDay } from './bench-rig';

/** The conditions in which an engine runs by itself. */
export const RUNNING = ['idle', 'high-idle', 'full-load'] as const;

/** A mild day, and the two ends of what a case may draw, in fuel that suits the weather. */
export function settingsOf(rig: Rig): [string, Setting][] {
  const end = (at: 0 | 1, fuel: string): Setting => ({
    airTemperature: toSi(Math.max(COLDEST, rig.settings.airC[at]), '°C'),
    altitude: rig.settings.altitudeM[at],
    fuel,
    supplyFilterAge: rig.settings.filterAge[at],
    mainFilterAge: rig.settings.filterAge[at],
    tankLevel: rig.settings.tankLevel[at === 0 ? 1 : 0],
    hoursStanding: rig.settings.hoursStanding[at],
    cylinder: 1,
  });
  return [
    ['a mild day', mildDay],
    ['a cold day with new filters and a full tank', end(0, 'winter-grade')],
    ['a hot day up high with old filters and little fuel', end(1, 'summer-grade')],
  ];
}

/** Below this winter grade is not clear of its cloud point, °C. */
const COLDEST = -5;

export function expectWithin(value: number, [least, most]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
}

/** Gauge pressure at a node, kPa. */
export function kpaAt({ pressures, values }: OperatingPoint, node: string): number {
  return fromSi((pressures[node] ?? Number.NaN) - (values.ambientPressure ?? Number.NaN), 'kPa');
}

/** Volume per second through an element. */
export function flow({ flows }: OperatingPoint, element: string): number {
  return flows[element] ?? Number.NaN;
}
