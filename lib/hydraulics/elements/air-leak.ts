import type { KilogramPerCubicMetre, Pascal, SquareMetre } from '../../units';
import { positivePart, positivePartSlope } from '../positive-part';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Law } from './element';
import { LINEAR_DROP } from './orifice';

export interface AirLeak {
  area: SquareMetre;
  flowCoefficient: number;
  ambient: Pascal;
  airDensity: KilogramPerCubicMetre;
}

/**
 * Air drawn in at a joint wherever the line runs below ambient pressure, as volume at the joint.
 *
 *     Q = K A √(2 (p_amb − p)⁺ / ρ_air)
 *
 * The outlet is the joint. The inlet is the far side of the pump that compresses the air away: between the two the
 * balance of volumes counts air like fuel, so it takes up room in the pumps; the inlet's pressure does not matter.
 * Valid for drops small against ambient (incompressible inflow), which a suction line keeps.
 */
export function airLeakLaw({ area, flowCoefficient, ambient, airDensity }: AirLeak): Law {
  const scale = flowCoefficient * area * Math.sqrt(2 / airDensity);
  return (_inlet, outlet, result) => {
    const below = positivePart(ambient - outlet, LINEAR_DROP);
    result.flow = scale * regularRoot(below, LINEAR_DROP);
    result.perInlet = 0;
    result.perOutlet = -scale * regularRootSlope(below, LINEAR_DROP) * positivePartSlope(ambient - outlet, LINEAR_DROP);
  };
}
