import { applyCause } from '../faults/apply-cause';
import type { Cause } from '../faults/cause';
import type { Fuel } from '../fluids/fuel';
import { PointsOnDemand } from '../rig/points-on-demand';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import type { Setting } from '../rig/setting';
import { Traces } from '../rig/traces/traces';

/** The rig, its day and its fuel, before anything breaks. */
export interface Sound {
  rig: Rig;
  setting: Setting;
  fuel: Fuel;
  points: PointsOnDemand;
}

/** One cause at a spread of severities. */
export interface Strata {
  cause: Cause;
  /** Evenly spaced from the mildest to the severest, each solved in a condition when that is asked for. */
  nodes: readonly Node[];
  /** Slices of the range, each standing for as much of it as the next. */
  slices: readonly Slice[];
  /** Slices between two solved severities. */
  perGap: number;
}

interface Node extends RigState {
  severity: number;
  points: PointsOnDemand;
}

/** A severity between two that are solved: `share` of the way from node `lower` to the next. */
export interface Slice {
  lower: number;
  share: number;
  severity: number;
}

/** Severities of a cause that are solved at first, the ends of its range included. */
const NODES = 5;
/** Slices that stand for the range of a cause: readings in between are interpolated. */
const SLICES = 16;

/** A cause at its spread of severities. */
export function strataOf(sound: Sound, cause: Cause): Strata {
  const { min, max } = cause.severity;
  const count = min === max ? 1 : NODES;
  const nodes: Node[] = [];
  for (let index = 0; index < count; index++) {
    const severity = count === 1 ? min : min + (index / (count - 1)) * (max - min);
    nodes.push(nodeAt(sound, cause, severity, nodes[index - 1]?.points ?? sound.points));
  }
  return layered(cause, nodes);
}

/** The same cause with a further severity solved between every two. */
export function refined(sound: Sound, { cause, nodes }: Strata): Strata {
  const more = nodes.flatMap((node, index) => {
    const next = nodes[index + 1];
    return next ? [node, nodeAt(sound, cause, (node.severity + next.severity) / 2, node.points)] : [node];
  });
  return layered(cause, more);
}

function nodeAt({ rig, setting, fuel }: Sound, cause: Cause, severity: number, near: PointsOnDemand): Node {
  const broken = applyCause(rig, cause, severity);
  return {
    severity,
    points: new PointsOnDemand(broken, setting, fuel, near),
    traces: new Traces(broken, setting, fuel),
  };
}

function layered(cause: Cause, nodes: readonly Node[]): Strata {
  const severities = nodes.map(({ severity }) => severity);
  return { cause, nodes, slices: slicesBetween(severities), perGap: SLICES / Math.max(1, nodes.length - 1) };
}

/** Slices of a range, by the severities that are solved. */
export function slicesBetween(severities: readonly number[]): Slice[] {
  const [first] = severities;
  if (first === undefined) throw new RangeError('A cause is solved at one severity at least');
  const gaps = severities.length - 1;
  if (gaps === 0) return [{ lower: 0, share: 0, severity: first }];
  return Array.from({ length: SLICES }, (_, slice) => {
    const place = ((slice + 0.5) / SLICES) * gaps;
    const lower = Math.floor(place);
    const from = severities[lower] as number;
    return {
      lower,
      share: place - lower,
      severity: from + (place - lower) * ((severities[lower + 1] as number) - from),
    };
  });
}
