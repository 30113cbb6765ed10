import { type Area, areas } from '../areas';
import type { Cause } from '../faults/cause';
import type { Belief } from './belief';
import type { Particles } from './particles';

/** Belief in each area: that something is wrong there. With two causes at work both areas count, so that sums may pass 1. */
export function byArea(particles: Particles, belief: Belief): Record<Area, number> {
  const sums = Object.fromEntries(areas.map((area) => [area, 0])) as Record<Area, number>;
  particles.causes.forEach((causes, index) => {
    for (const { area } of causes) sums[area] += belief[index] as number;
  });
  return sums;
}

/** Belief in each cause: that it is at work, alone or with another. */
export function byCause(particles: Particles, belief: Belief): Map<string, number> {
  const sums = new Map<string, number>();
  particles.causes.forEach((causes, index) => {
    for (const { id } of causes) sums.set(id, (sums.get(id) ?? 0) + (belief[index] as number));
  });
  return sums;
}

/** Belief in each repair decision: that this, and nothing more, puts the vehicle right. */
export function byRepair(particles: Particles, belief: Belief): Map<string, number> {
  const sums = new Map<string, number>();
  particles.causes.forEach((causes, index) => {
    const id = repairDecision(causes);
    sums.set(id, (sums.get(id) ?? 0) + (belief[index] as number));
  });
  return sums;
}

/** What one would do about causes: the usual repair of each. Causes with the same repair need not be told apart. */
export function repairDecision(causes: readonly Pick<Cause, 'repairs'>[]): string {
  const ids = causes.map(({ repairs }) => repairs[0]?.id ?? '');
  return ids.length > 1 ? ids.sort().join(' + ') : (ids[0] as string);
}

/** Minutes that the usual repair of each cause takes. */
export function repairMinutes(causes: readonly Pick<Cause, 'repairs'>[]): number {
  return causes.reduce((sum, { repairs }) => sum + (repairs[0]?.minutes ?? 0), 0);
}
