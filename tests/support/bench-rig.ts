import { loadCatalogue } from '@/content/load';
import { applyCause } from '@/lib/faults/apply-cause';
import type { Fuel } from '@/lib/fluids/fuel';
import type { OperatingPoints } from '@/lib/rig/operating-point';
import { operatingPoints } from '@/lib/rig/operating-point';
import type { Rig } from '@/lib/rig/rig';
import { type RigState, rigState } from '@/lib/rig/rig-state';
import type { Setting } from '@/lib/rig/setting';

export const catalogue = loadCatalogue();

/** A mild day near sea level, filters a third through their life. */
export const mildDay: Setting = {
  airTemperature: 293.15,
  altitude: 300,
  fuel: 'summer-grade',
  supplyFilterAge: 0.3,
  mainFilterAge: 0.3,
  tankLevel: 0.5,
  hoursStanding: 10,
  cylinder: 3,
};

export function aRig(id = 'tern-13'): Rig {
  const rig = catalogue.rigs.get(id);
  if (!rig) throw new Error(`No rig ${id}`);
  return rig;
}

export function fuelOf({ fuel }: Setting): Fuel {
  const found = catalogue.fuels.get(fuel);
  if (!found) throw new Error(`No fuel ${fuel}`);
  return found;
}

export function causeOf(id: string) {
  const cause = catalogue.causes.get(id);
  if (!cause) throw new Error(`No cause ${id}`);
  return cause;
}

/** A rig in a setting, as it is or with one thing wrong with it. */
export function stateOf(rig = aRig(), setting = mildDay): RigState {
  return rigState(rig, setting, fuelOf(setting));
}

export function stateWith(cause: string, severity: number, setting = mildDay, rig = aRig()): RigState {
  return stateOf(applyCause(rig, causeOf(cause), severity), setting);
}

export function pointsWith(cause: string, severity: number, setting = mildDay, rig = aRig()): OperatingPoints {
  return operatingPoints(applyCause(rig, causeOf(cause), severity), setting, fuelOf(setting));
}

export function healthyPoints(setting = mildDay, rig = aRig()): OperatingPoints {
  return operatingPoints(rig, setting, fuelOf(setting));
}
