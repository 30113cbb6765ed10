import type { Fuel } from '../fluids/fuel';
import { SolveError } from '../hydraulics/errors';
import { holdPressure } from '../hydraulics/hold-pressure';
import type { Branch, Solution } from '../hydraulics/network';
import { solve } from '../hydraulics/solve';
import { linearStore } from '../hydraulics/store';
import { followTransient } from '../hydraulics/transient';
import type { CubicMetrePerSecond, Kelvin, Pascal } from '../units';
import { type BoundRig, buildNetwork, type SideTemperatures } from './build-network';
import { type SteadyConditionId, steadyConditionIds } from './condition';
import { firstTemperatures, heatBalance, sideTemperatures } from './heat-balance';
import type { Rig } from './rig';
import type { Setting } from './setting';
import { addStartUp } from './start-up';
import { addValues } from './values';

/** What a rig does in one condition, at rest. */
export interface OperatingPoint {
  /** Absolute, by node. */
  pressures: Record<string, Pascal>;
  /** By node. */
  temperatures: Record<string, Kelvin>;
  /** Positive in the normal direction, by element. */
  flows: Record<string, CubicMetrePerSecond>;
  /** Everything else that a gauge, a screen or a trouble code can ask for, SI. See values.ts and start-up.ts. */
  values: Record<string, number>;
}

export type OperatingPoints = Record<SteadyConditionId, OperatingPoint>;

/** A rig that has come to rest: what was solved, and at which temperatures. */
export interface Rested {
  bound: BoundRig;
  solution: Solution;
  /** By node index. */
  temperatures: Float64Array;
  /** What the fuel's properties were taken at. */
  assumed: SideTemperatures;
}

/** What a rig that differs little may set out from. */
export type Nearby = Pick<Rested, 'solution' | 'assumed'>;

/** Fuel properties are right once no side's temperature moves by more than this: 0.1 % of a viscosity. */
const SETTLED: Kelvin = 0.05;
const MOST_PASSES = 25;

/** @throws SolveError when the rig has no steady state there. */
export function operatingPoint(rig: Rig, setting: Setting, fuel: Fuel, condition: SteadyConditionId): OperatingPoint {
  return pointAt(rig, setting, fuel, condition, comeToRest(rig, setting, fuel, condition));
}

/** Everything that can be asked of a rig that has come to rest. */
export function pointAt(
  rig: Rig,
  setting: Setting,
  fuel: Fuel,
  condition: SteadyConditionId,
  rested: Rested,
): OperatingPoint {
  const { bound, solution, temperatures } = rested;
  const { nodes, branches } = bound.network;
  const point: OperatingPoint = { pressures: {}, temperatures: {}, flows: {}, values: {} };
  for (let node = 0; node < nodes.length; node++) {
    point.pressures[nodes[node] as string] = solution.pressures[node] as number;
    point.temperatures[nodes[node] as string] = temperatures[node] as number;
  }
  for (let index = 0; index < branches.length; index++)
    point.flows[(branches[index] as Branch).id] = solution.flows[index] as number;
  addValues(rig, setting, fuel, rested, point);
  if (condition === 'key-on' || condition === 'cranking')
    addStartUp(rig, setting, fuel, condition, rested, point.values);
  return point;
}

export function operatingPoints(rig: Rig, setting: Setting, fuel: Fuel): OperatingPoints {
  return Object.fromEntries(
    steadyConditionIds.map((id) => [id, operatingPoint(rig, setting, fuel, id)]),
  ) as OperatingPoints;
}

/**
 * Flows and temperatures that agree: solves at the temperatures that the last flows gave until those stay.
 *
 * @param near  The same rig in the same condition with other parameters, from which to set out.
 */
export function comeToRest(
  rig: Rig,
  setting: Setting,
  fuel: Fuel,
  condition: SteadyConditionId,
  near?: Nearby,
): Rested {
  let assumed = near?.assumed ?? firstTemperatures(rig, setting, condition);
  let last = near?.solution;
  for (let pass = 1; ; pass++) {
    const bound = buildNetwork(rig, setting, fuel, condition, assumed);
    const solution = balance(bound, last);
    const temperatures = heatBalance(rig, setting, condition, bound, solution);
    const found = sideTemperatures(rig, temperatures, setting.airTemperature);
    if (farthest(found, assumed) < SETTLED || pass === MOST_PASSES) return { bound, solution, temperatures, assumed };
    assumed = found;
    last = solution;
  }
}

/** Solves from the last pass, or else from the rig's own first guess, or else from where it would drift in time. */
function balance(bound: BoundRig, last: Solution | undefined): Solution {
  for (const start of [last, { pressures: bound.start, demand: undefined }]) {
    try {
      if (start) return balanceFrom(bound, start.pressures, start.demand);
    } catch (error) {
      if (!(error instanceof SolveError)) throw error;
    }
  }
  return balanceFrom(bound, driftToRest(bound), undefined);
}

function balanceFrom(
  { network, control, restDemand }: BoundRig,
  start: Float64Array,
  demand: number | undefined,
): Solution {
  return control ? holdPressure(network, control, start, demand) : solve(network, { start, demand: restDemand });
}

/** Room at every node, m³/Pa, and time for it to come to rest, s: a way to a steady state where Newton's leads astray. */
const ROOM = 1e-10;
const LONG = 1e5;

function driftToRest({ network, start, restDemand }: BoundRig): Float64Array {
  const room = linearStore(ROOM);
  const moments = followTransient(network, {
    stores: network.nodes.map(() => room),
    start,
    until: LONG,
    controller: { demand: () => restDemand || 1 },
    tolerance: 0.1,
  });
  return moments[moments.length - 1]?.pressures ?? start;
}

function farthest(some: SideTemperatures, others: SideTemperatures): Kelvin {
  return Math.max(
    Math.abs(some.suction - others.suction),
    Math.abs(some.low - others.low),
    Math.abs(some.high - others.high),
    Math.abs(some.return - others.return),
  );
}
