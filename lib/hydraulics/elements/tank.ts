import { type Metre, type SquareMetre, STANDARD_GRAVITY } from '../../units';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Law } from './element';
import { LINEAR_DROP } from './orifice';

export interface Tank {
  ventArea: SquareMetre;
  flowCoefficient: number;
  /** Fuel above the pick-up. */
  level: Metre;
}

/**
 * A vented tank, from ambient to its pick-up: what fuel leaves, air replaces through the vent; the level adds its head.
 *
 *     Q = K A √(2 (p_amb + ρ g h − p_pickup) / ρ_air)
 */
export function tankLaw({ ventArea, flowCoefficient, level }: Tank, fuelDensity: number, airDensity: number): Law {
  const scale = flowCoefficient * ventArea * Math.sqrt(2 / airDensity);
  const head = fuelDensity * STANDARD_GRAVITY * level;
  return (inlet, outlet, result) => {
    const drop = inlet + head - outlet;
    const slope = scale * regularRootSlope(drop, LINEAR_DROP);
    result.flow = scale * regularRoot(drop, LINEAR_DROP);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
