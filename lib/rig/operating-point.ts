import { bulkModulus } from '../fluids/bulk-modulus';
import type { Fuel } from '../fluids/fuel';
import { holdPressure } from '../hydraulics/hold-pressure';
import type { Network, Solution } from '../hydraulics/network';
import { solve } from '../hydraulics/solve';
import type { CubicMetrePerSecond, Pascal } from '../units';
import { type BoundRig, buildNetwork } from './build-network';
import type { ConditionId } from './condition';
import { conditionIds } from './condition';
import { elementOfKind, type Rig } from './rig';
import type { Setting } from './setting';

/** What a rig does in one condition, at rest. */
export interface OperatingPoint {
  /** Absolute, by node. */
  pressures: Record<string, Pascal>;
  /** Positive in the normal direction, by element. */
  flows: Record<string, CubicMetrePerSecond>;
  /**
   * Everything else that a gauge, a screen or a trouble code can ask for, SI. `secondsToPrime` and
   * `secondsToEnable` are there only while cranking, and only when the rail gets there at all.
   */
  values: Record<string, number>;
}

export type OperatingPoints = Record<ConditionId, OperatingPoint>;

/** @throws SolveError when the rig has no steady state there. */
export function operatingPoint(rig: Rig, setting: Setting, fuel: Fuel, condition: ConditionId): OperatingPoint {
  const bound = buildNetwork(rig, setting, fuel, condition);
  const { network, control, start } = bound;
  const solution = control ? holdPressure(network, control, start) : solve(network, { start, demand: 0 });
  const pressures = Object.fromEntries(network.nodes.map((id, index) => [id, solution.pressures[index] as number]));
  const flows = Object.fromEntries(network.branches.map(({ id }, index) => [id, solution.flows[index] as number]));
  const point = { pressures, flows, values: valuesOf(rig, bound, pressures, flows, solution) };
  if (condition === 'cranking') addStart(rig, fuel, { ...bound, start: solution.pressures }, point);
  return point;
}

export function operatingPoints(rig: Rig, setting: Setting, fuel: Fuel): OperatingPoints {
  return Object.fromEntries(conditionIds.map((id) => [id, operatingPoint(rig, setting, fuel, id)])) as OperatingPoints;
}

function valuesOf(
  rig: Rig,
  { surroundings: at, temperatures }: BoundRig,
  pressures: Record<string, Pascal>,
  flows: Record<string, CubicMetrePerSecond>,
  solution: Solution,
): Record<string, number> {
  const sensor = elementOfKind(rig, 'rail-sensor');
  const trueRail = (pressures[sensor.node] ?? 0) - at.ambient;
  const sensed = Math.min(Math.max(0, trueRail + at.sensorOffset), sensor.fullScaleMpa * 1e6);
  const commandedFlow = at.injected * at.engineSpeed * at.shotsPerRevolution;
  return {
    ambientPressure: at.ambient,
    engineSpeed: at.engineSpeed,
    commandedRailPressure: at.railCommand,
    sensedRailPressure: sensed,
    trueRailPressure: trueRail,
    // A controller with nothing to control leaves its valve where it rests.
    meteringDemand: solution.demand,
    railShare: at.railCommand > 0 ? sensed / at.railCommand : 1,
    freeGasFraction: freeGas(rig, flows),
    fuelTemperature: temperatures.fuel,
    railTemperature: temperatures.rail,
    injectedShare: commandedFlow > 0 ? (flows[elementOfKind(rig, 'injectors').id] ?? 0) / commandedFlow : 1,
    reliefOpening: trueRail - elementOfKind(rig, 'relief-valve').openMpa * 1e6,
    deliveryPressure: (pressures[elementOfKind(rig, 'metering-valve').from] ?? 0) - at.ambient,
  };
}

/** Share of gas in what passes the suction joint's node: air drawn in over everything that leaves the node. */
function freeGas(rig: Rig, flows: Record<string, CubicMetrePerSecond>): number {
  const joint = rig.elements.find((element) => element.kind === 'air-leak');
  if (!joint) return 0;
  const air = flows[joint.id] ?? 0;
  const fuel = rig.elements.reduce(
    (sum, element) => ('to' in element && element.to === joint.to ? sum + Math.max(0, flows[element.id] ?? 0) : sum),
    0,
  );
  return fuel > 1e-9 ? air / fuel : 0;
}

/**
 * Whether and how soon the engine can start: the rail must be seen at the enabling pressure and truly lift the needles.
 * First the pumps make good what ran back while it stood, then the rail fills against its leaks:
 *
 *     t = V_void / Q_supply  +  V_rail Δp / (K Q_net)
 *
 * each with the flow half-way: the main filter's inlet held at ambient, then the rail at half the pressure needed.
 */
function addStart(rig: Rig, fuel: Fuel, bound: BoundRig, { values }: OperatingPoint): void {
  const needed = Math.max(
    rig.injectionEnableMpa * 1e6 - bound.surroundings.sensorOffset,
    elementOfKind(rig, 'injectors').needleOpeningMpa * 1e6,
  );
  values.willStart = (values.trueRailPressure ?? 0) >= needed ? 1 : 0;
  if (values.willStart === 0) return;
  const rail = elementOfKind(rig, 'rail');
  const net = netInflow(bound, rail.node, needed / 2);
  const supply = netInflow(bound, elementOfKind(rig, 'cooling-plate').to, 0);
  const modulus = bulkModulus(fuel.density15, bound.temperatures.rail, needed / 2);
  const prime = supply > 0 ? (rig.standingVoidCm3 * 1e-6) / supply : Number.POSITIVE_INFINITY;
  const rise = net > 0 ? (rail.volumeCm3 * 1e-6 * needed) / (modulus * net) : Number.POSITIVE_INFINITY;
  if (prime + rise > rig.longestCrankSeconds) {
    values.willStart = 0;
    return;
  }
  values.secondsToPrime = prime;
  values.secondsToEnable = rise;
}

/** What flows into a node with the metering valve wide open and the node held at a pressure above ambient. */
function netInflow(bound: BoundRig, nodeId: string, pressure: Pascal): CubicMetrePerSecond {
  const held = bound.nodeIndex.get(nodeId);
  const fixed = bound.network.fixed.map((value, node) =>
    node === held ? bound.surroundings.ambient + pressure : value,
  );
  const network: Network = { ...bound.network, fixed };
  const { flows } = solve(network, { start: bound.start, demand: 1 });
  return network.branches.reduce((sum, { from, to }, index) => {
    const flow = flows[index] as number;
    return sum + (to === held ? flow : 0) - (from === held ? flow : 0);
  }, 0);
}
