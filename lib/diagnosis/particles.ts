import { type Area, areas } from '../areas';
import type { Catalogue } from '../catalogue';
import { applyCause, canHappen } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import type { Rig } from '../rig/rig';
import { type RigState, rigState } from '../rig/rig-state';
import type { Setting } from '../rig/setting';
import { complaintOf } from '../symptoms/complaint';
import { troubleCodes } from '../symptoms/trouble-codes';
import type { TroubleCode } from '../symptoms/work-order';

/** One thing that could be wrong, how badly, and what the rig would then do. */
export interface Particle extends RigState {
  cause: string;
  area: Area;
  severity: number;
  /** Prior share before the work order is read; all particles sum to 1. */
  prior: number;
  codes: readonly TroubleCode[];
  complaint: string | undefined;
}

/** Severities that stand for a cause's range, each the middle of an equal slice. */
const STRATA = 5;

/** Every cause at a spread of severities, on this rig in this setting. */
export function simulateParticles(rig: Rig, setting: Setting, catalogue: Catalogue): Particle[] {
  const causes = [...catalogue.causes.values()].filter((cause) => canHappen(rig, cause, setting));
  const total = causes.reduce((sum, { weight }) => sum + weight, 0);
  return causes.flatMap((cause) => {
    const severities = strata(cause);
    return severities.map((severity) => {
      const prior = cause.weight / total / severities.length;
      return simulate(rig, setting, catalogue, cause, severity, prior);
    });
  });
}

function strata({ severity: { min, max } }: Cause): number[] {
  if (min === max) return [min];
  return Array.from({ length: STRATA }, (_, slice) => min + ((slice + 0.5) / STRATA) * (max - min));
}

function simulate(
  rig: Rig,
  setting: Setting,
  { fuels }: Catalogue,
  cause: Cause,
  severity: number,
  prior: number,
): Particle {
  const fuel = fuels.get(setting.fuel);
  if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
  const state = rigState(applyCause(rig, cause, severity), setting, fuel);
  const codes = troubleCodes(rig, state.points);
  return {
    cause: cause.id,
    area: cause.area,
    severity,
    prior,
    ...state,
    codes,
    complaint: complaintOf(rig, state.points, codes),
  };
}

/** Sums weights, one a particle, over the areas. */
export function byArea(particles: readonly Particle[], weights: ArrayLike<number>): Record<Area, number> {
  const sums = Object.fromEntries(areas.map((area) => [area, 0])) as Record<Area, number>;
  particles.forEach((particle, index) => {
    sums[particle.area] += weights[index] ?? 0;
  });
  return sums;
}

/** Sums weights, one a particle, over the causes. */
export function byCause(particles: readonly Particle[], weights: ArrayLike<number>): Map<string, number> {
  const sums = new Map<string, number>();
  particles.forEach(({ cause }, index) => {
    sums.set(cause, (sums.get(cause) ?? 0) + (weights[index] ?? 0));
  });
  return sums;
}
