import type { KilogramPerCubicMetre } from '../../units';
import { positivePart, positivePartSlope } from '../positive-part';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Law } from './element';
import { LINEAR_DROP, type Orifice } from './orifice';

/**
 * Fuel lost through a hole to the outside: an orifice that passes nothing inward.
 *
 *     Q = K A √(2 (p − p_outside)⁺ / ρ)
 *
 * Where the line runs below ambient the same hole draws air, which is an element of its own.
 *
 * @source Crane TP-410, orifice equation.
 */
export function outsideLeakLaw({ area, flowCoefficient }: Orifice, density: KilogramPerCubicMetre): Law {
  const scale = flowCoefficient * area * Math.sqrt(2 / density);
  return (inlet, outlet, result) => {
    const above = positivePart(inlet - outlet, LINEAR_DROP);
    const slope = scale * regularRootSlope(above, LINEAR_DROP) * positivePartSlope(inlet - outlet, LINEAR_DROP);
    result.flow = scale * regularRoot(above, LINEAR_DROP);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
