import { applyCause } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import type { Fuel } from '../fluids/fuel';
import { PointsOnDemand } from '../rig/points-on-demand';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import type { Setting } from '../rig/setting';
import { Traces } from '../rig/traces/traces';

/** One cause at a spread of severities. */
export interface Strata {
  cause: Cause;
  /** Solved, from the mildest to the severest; one where there is only one way to have it. */
  nodes: readonly RigState[];
  /** Slices of the range, each standing for as much of it as the next. */
  slices: readonly Slice[];
}

/** A severity between two that are solved: `share` of the way from one node to the next. */
export interface Slice {
  lower: number;
  upper: number;
  share: number;
  severity: number;
}

/** Severities of a cause that are solved, the ends of its range included. */
const NODES = 5;
/** Slices between two of them: readings in between are interpolated. */
export const SLICES = 4;

/** A cause at its spread of severities; its points are solved when asked for, each from the one before. */
export function strataOf(rig: Rig, setting: Setting, fuel: Fuel, cause: Cause, sound: PointsOnDemand): Strata {
  const severities = nodeSeverities(cause);
  let near = sound;
  const nodes = severities.map((severity) => {
    const broken = applyCause(rig, cause, severity);
    near = new PointsOnDemand(broken, setting, fuel, near);
    return { points: near, traces: new Traces(broken, setting, fuel) };
  });
  return { cause, nodes, slices: slicesBetween(severities) };
}

function nodeSeverities({ severity: { min, max } }: Cause): number[] {
  if (min === max) return [min];
  return Array.from({ length: NODES }, (_, node) => min + (node / (NODES - 1)) * (max - min));
}

/** Slices of a cause's range, by the severities that are solved. */
export function slicesBetween(severities: readonly number[]): Slice[] {
  const [only, ...more] = severities;
  if (only === undefined) throw new RangeError('A cause is solved at one severity at least');
  if (more.length === 0) return [{ lower: 0, upper: 0, share: 0, severity: only }];
  return more.flatMap((upperSeverity, lower) => {
    const from = severities[lower] as number;
    return Array.from({ length: SLICES }, (_, slice) => {
      const share = (slice + 0.5) / SLICES;
      return { lower, upper: lower + 1, share, severity: from + share * (upperSeverity - from) };
    });
  });
}
