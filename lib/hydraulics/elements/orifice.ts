import type { KilogramPerCubicMetre, Pascal, SquareMetre } from '../../units';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Law } from './element';

export interface Orifice {
  area: SquareMetre;
  /** Discharge coefficient with the velocity of approach in it: K in Q = K·A·√(2Δp/ρ). */
  flowCoefficient: number;
}

/** Below about this drop flow is taken as linear in it, which keeps the slope finite at no flow. */
export const LINEAR_DROP: Pascal = 100;

/**
 * Flow through a sharp-edged restriction.
 *
 * Q = K·A·√(2/ρ)·Δp / (Δp² + δ²)^¼, which is K·A·√(2Δp/ρ) for Δp ≫ δ = 100 Pa. Range: K constant, so drops that keep
 * the throat turbulent; no cavitation.
 *
 * @source Crane TP-410, orifice equation; the smoothing through zero is ours.
 */
export function orificeLaw({ area, flowCoefficient }: Orifice, density: KilogramPerCubicMetre): Law {
  const scale = flowCoefficient * area * Math.sqrt(2 / density);
  return (inlet, outlet, result) => {
    const drop = inlet - outlet;
    const slope = scale * regularRootSlope(drop, LINEAR_DROP);
    result.flow = scale * regularRoot(drop, LINEAR_DROP);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
