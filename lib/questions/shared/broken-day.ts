import type { Catalogue } from '../../catalogue';
import { canHappen } from '../../faults/apply-cause';
import type { Cause } from '../../faults/cause';
import type { RigState } from '../../rig/rig-state';
import { brokenState, type RigDay } from './rig-day';

/** Something wrong with a rig. Severity 0…1, one of a grid. */
export interface Fault {
  cause: Cause;
  severity: number;
}

const states = new WeakMap<RigDay, Map<string, RigState>>();

/** The state of a rig on one of its days with something wrong with it, kept: the same however often and when it is asked for. */
export function brokenOn(day: RigDay, { cause, severity }: Fault): RigState {
  const known = states.get(day) ?? new Map<string, RigState>();
  states.set(day, known);
  const name = `${cause.id} ${severity}`;
  const state = known.get(name) ?? brokenState(day, cause, severity);
  known.set(name, state);
  return state;
}

/** Causes that can befall a rig on a day, without those that break nothing. */
export function causesOn({ rig, setting }: RigDay, { causes }: Pick<Catalogue, 'causes'>): Cause[] {
  return [...causes.values()].filter((cause) => cause.effects.length > 0 && canHappen(rig, cause, setting));
}

/** Severities of the grid that a cause may have; its only one where it has no other. */
export function severitiesOf({ severity: { min, max } }: Cause, grid: readonly number[]): number[] {
  const within = grid.filter((severity) => severity >= min && severity <= max);
  return within.length > 0 ? within : [max];
}
