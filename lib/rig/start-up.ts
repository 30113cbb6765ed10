import { bulkModulus } from '../fluids/bulk-modulus';
import type { Fuel } from '../fluids/fuel';
import type { Network } from '../hydraulics/network';
import { solve } from '../hydraulics/solve';
import type { CubicMetrePerSecond, Pascal, Second } from '../units';
import type { SteadyConditionId } from './condition';
import type { Rested } from './operating-point';
import { elementOfKind, type Rig } from './rig';
import type { Setting } from './setting';
import { voidAfterStanding } from './standing';

/** Nobody waits longer for a pump to prime. Common practice, no source. */
const LONGEST_PRIME: Second = 600;

/**
 * Whether and how soon a rig primes and starts. The pumps first make good what ran back while it stood, then the rail fills
 * against its leaks:
 *
 *     t = V_void / Q_supply  +  V_rail Δp / (K Q_net)
 *
 * each with the flow half-way: the priming node held at ambient, then the rail at half the pressure needed. The traces
 * follow the same thing step by step; this is what can be asked for cheaply.
 *
 * `willStart` and, where it does, `secondsToEnable` are there while cranking: the rail must be seen at the enabling pressure
 * and truly lift the needles.
 */
export function addStartUp(
  rig: Rig,
  setting: Setting,
  fuel: Fuel,
  condition: SteadyConditionId,
  rested: Rested,
  values: Record<string, number>,
): void {
  const supply = netInflow(rested, rig.primingNode, 0, 0);
  const prime = supply > 0 ? voidAfterStanding(rig, setting) / supply : Number.POSITIVE_INFINITY;
  values.secondsToPrime = Math.min(prime, LONGEST_PRIME);
  if (condition === 'key-on') return;
  const rise = secondsToEnable(rig, fuel, rested, values.trueRailPressure ?? 0);
  values.willStart = prime + rise <= rig.longestCrankSeconds ? 1 : 0;
  if (values.willStart === 1) values.secondsToEnable = rise;
}

function secondsToEnable(rig: Rig, fuel: Fuel, rested: Rested, reached: Pascal): number {
  const { sensor } = rested.bound.surroundings;
  if (!sensor.believed) return Number.POSITIVE_INFINITY;
  const needed = Math.max(
    (rig.injectionEnableMpa * 1e6 - sensor.offset) / sensor.gain,
    elementOfKind(rig, 'injectors').needleOpeningMpa * 1e6,
  );
  if (reached < needed) return Number.POSITIVE_INFINITY;
  const rail = elementOfKind(rig, 'rail');
  const net = netInflow(rested, rail.node, needed / 2, 1);
  const temperature = rested.temperatures[rested.bound.nodeIndex.get(rail.node) as number] as number;
  const modulus = bulkModulus(fuel.density15, temperature, needed / 2);
  return net > 0 ? (rail.volumeCm3 * 1e-6 * needed) / (modulus * net) : Number.POSITIVE_INFINITY;
}

/** What flows into a node held at a pressure above ambient, at a fixed demand. */
function netInflow({ bound, solution }: Rested, node: string, pressure: Pascal, demand: number): CubicMetrePerSecond {
  const held = bound.nodeIndex.get(node);
  const fixed = bound.network.fixed.map((value, index) =>
    index === held ? bound.surroundings.ambient + pressure : value,
  );
  const network: Network = { ...bound.network, fixed };
  const { flows } = solve(network, { start: solution.pressures, demand });
  return network.branches.reduce((sum, { from, to }, index) => {
    const flow = flows[index] as number;
    return sum + (to === held ? flow : 0) - (from === held ? flow : 0);
  }, 0);
}
