import { type CubicMetrePerSecond, STANDARD_GRAVITY } from '../units';
import { elementOfKind, type Rig } from './rig';
import type { Setting } from './setting';

/**
 * Fuel missing from the low-pressure circuit after standing, m³: what was always missing, and what ran back to the tank
 * through the seat of the valve that holds the column.
 *
 *     V = V₀ + (V₁ − V₀)(1 − exp(−Q t / (V₁ − V₀)))     Q = K A_seat √(2 g h)
 *
 * The column stands h above the fuel in the tank. What has run back cannot run back again, hence the exponential. Air finds
 * its way in through the return.
 *
 * @source Torricelli's law for the seat; the emptying is ours, assumed.
 */
export function voidAfterStanding(rig: Rig, { hoursStanding, tankLevel }: Setting): number {
  const { leastCm3, mostCm3, heldBy, columnM } = rig.standing;
  const tank = elementOfKind(rig, 'tank');
  const height = Math.max(0, columnM - tank.depthM * tankLevel * tank.levelShare);
  const left = mostCm3 - leastCm3;
  const ranBack = seatFlow(rig, heldBy, height) * 1e6 * hoursStanding * 3600;
  return (leastCm3 + left * (1 - Math.exp(-ranBack / left))) * 1e-6;
}

function seatFlow(rig: Rig, heldBy: string, height: number): CubicMetrePerSecond {
  const valve = rig.elements.find(({ id }) => id === heldBy);
  if (valve?.kind !== 'check-valve') throw new RangeError(`Rig ${rig.id}: no check valve ${heldBy} holds the column`);
  return valve.flowCoefficient * valve.seatLeakMm2 * 1e-6 * Math.sqrt(2 * STANDARD_GRAVITY * height);
}
