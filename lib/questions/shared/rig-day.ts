import { drawSetting } from '../../cases/case-from-seed';
import type { Catalogue } from '../../catalogue';
import { applyCause } from '../../faults/apply-cause';
import type { Cause } from '../../faults/cause';
import type { Fuel } from '../../fluids/fuel';
import type { RandomStream } from '../../random';
import { PointsOnDemand } from '../../rig/points-on-demand';
import type { Rig } from '../../rig/rig';
import type { RigState } from '../../rig/rig-state';
import type { Setting } from '../../rig/setting';
import { Traces } from '../../rig/traces/traces';

/** A sound rig on one of few days: each condition is solved once, however many questions are set on it. */
export interface RigDay extends RigState {
  rig: Rig;
  setting: Setting;
  fuel: Fuel;
  points: PointsOnDemand;
}

/** Days that a rig's questions are set on. */
export const DAYS = 8;

const known = new WeakMap<Rig, Map<string, RigDay>>();

/** One of a rig's days. @throws RangeError when content has no such fuel. */
export function drawDay(stream: RandomStream, rig: Rig, catalogue: Pick<Catalogue, 'fuels'>): RigDay {
  return dayOf(Math.floor(stream.between(0, DAYS)), rig, catalogue);
}

/** The day of that number, from 0. */
export function dayOf(number: number, rig: Rig, catalogue: Pick<Catalogue, 'fuels'>): RigDay {
  const days = known.get(rig) ?? new Map<string, RigDay>();
  known.set(rig, days);
  const name = `day ${number}`;
  const day = days.get(name) ?? solveDay(name, rig, catalogue);
  days.set(name, day);
  return day;
}

function solveDay(name: string, rig: Rig, catalogue: Pick<Catalogue, 'fuels'>): RigDay {
  const setting = drawSetting(rig, name, catalogue);
  const fuel = catalogue.fuels.get(setting.fuel);
  if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
  return {
    rig,
    setting,
    fuel,
    points: new PointsOnDemand(rig, setting, fuel),
    traces: new Traces(rig, setting, fuel),
  };
}

/** The same rig on the same day with something wrong with it; solved when something of it is asked for. */
export function brokenState({ rig, setting, fuel, points }: RigDay, cause: Cause, severity: number): RigState {
  const broken = applyCause(rig, cause, severity);
  return {
    points: new PointsOnDemand(broken, setting, fuel, points),
    traces: new Traces(broken, setting, fuel),
  };
}
