import type { SquareMetre } from '../../units';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Fluid, Law } from './element';
import { LINEAR_DROP } from './orifice';

export interface MeteringValve {
  /** Full opening of a clean valve. */
  area: SquareMetre;
  flowCoefficient: number;
  /** Share of the area open at demand 0. */
  shutFraction: number;
  /** Share of the area that deposits have left. */
  freeFraction: number;
  /** Share of the area that a stuck valve leaves open at any demand. */
  stuckOpenFraction: number;
}

/** The port widens towards the end of its travel: this share of the opening is linear in demand, the rest quadratic. */
const LINEAR_SHARE = 0.2;

/**
 * A variable orifice that answers to the rail-pressure controller.
 *
 *     Q = K A(u) √(2 Δp / ρ)     A(u) = A f [o + (1 − o) (s + (1 − s)(0.2 u + 0.8 u²))]
 *
 * with f the free, o the stuck-open and s the shut share.
 *
 * Demand runs 0…1. Outside that range the opening goes on smoothly, so that the solver can see which way a saturated
 * controller would want to go.
 */
export function meteringValveLaw(valve: MeteringValve, { density }: Fluid): Law {
  const full = valve.flowCoefficient * valve.area * valve.freeFraction * Math.sqrt(2 / density);
  const { shutFraction, stuckOpenFraction } = valve;
  const closing = 1 - stuckOpenFraction;
  return (inlet, outlet, result, demand) => {
    const drop = inlet - outlet;
    const open = stuckOpenFraction + closing * opening(demand, shutFraction);
    const flowPerArea = full * regularRoot(drop, LINEAR_DROP);
    const slope = full * open * regularRootSlope(drop, LINEAR_DROP);
    result.flow = open * flowPerArea;
    result.perInlet = slope;
    result.perOutlet = -slope;
    result.perDemand = closing * openingSlope(demand, shutFraction) * flowPerArea;
  };
}

function opening(demand: number, shut: number): number {
  if (demand < 0) return shut * Math.exp((demand * (1 - shut) * LINEAR_SHARE) / shut);
  return shut + (1 - shut) * demand * (LINEAR_SHARE + (1 - LINEAR_SHARE) * demand);
}

function openingSlope(demand: number, shut: number): number {
  const atZero = (1 - shut) * LINEAR_SHARE;
  if (demand < 0) return atZero * Math.exp((demand * atZero) / shut);
  return (1 - shut) * (LINEAR_SHARE + 2 * (1 - LINEAR_SHARE) * demand);
}
