import type { Law } from '@/lib/hydraulics/elements/element';
import { orificeLaw } from '@/lib/hydraulics/elements/orifice';
import type { Network } from '@/lib/hydraulics/network';
import type { Pascal } from '@/lib/units';

export const DENSITY = 800;
export const HIGH: Pascal = 5e5;
export const LOW: Pascal = 1e5;

/** Flow of a sharp-edged orifice by hand: K A √(2 Δp / ρ). */
export function orificeFlow(areaMm2: number, drop: Pascal): number {
  return 0.62 * areaMm2 * 1e-6 * Math.sqrt((2 * drop) / DENSITY);
}

export function orifice(areaMm2: number): Law {
  return orificeLaw({ area: areaMm2 * 1e-6, flowCoefficient: 0.62 }, DENSITY);
}

/** A network written as its nodes with what holds them, and its branches as [from, to, law]. */
export function aNetwork(
  nodes: Record<string, Pascal | undefined>,
  branches: readonly (readonly [string, string, Law])[],
): Network {
  const names = Object.keys(nodes);
  return {
    nodes: names,
    fixed: Object.values(nodes),
    branches: branches.map(([from, to, law], index) => ({
      id: `branch-${index}`,
      from: names.indexOf(from),
      to: names.indexOf(to),
      law,
    })),
  };
}

/** Everything at the same pressure. */
export function flatStart({ nodes }: Network, pressure: Pascal = 2e5): Float64Array {
  return new Float64Array(nodes.length).fill(pressure);
}

/** in → left and right → out with a bridge from left to right; areas in mm². */
export function bridge(inLeft: number, inRight: number, leftOut: number, rightOut: number): Network {
  return aNetwork({ in: HIGH, left: undefined, right: undefined, out: LOW }, [
    ['in', 'left', orifice(inLeft)],
    ['in', 'right', orifice(inRight)],
    ['left', 'out', orifice(leftOut)],
    ['right', 'out', orifice(rightOut)],
    ['left', 'right', orifice(1)],
  ]);
}
