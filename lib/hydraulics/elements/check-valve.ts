import type { Pascal, SquareMetre } from '../../units';
import { positivePart, positivePartSlope } from '../positive-part';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Fluid, Law } from './element';
import { LINEAR_DROP } from './orifice';

export interface CheckValve {
  crack: Pascal;
  area: SquareMetre;
  flowCoefficient: number;
  /** Left open when the valve sits shut. */
  seatLeakArea: SquareMetre;
}

/**
 * A spring-loaded valve: shut below its crack pressure but for the seat's leak, an orifice beyond it.
 *
 *     Q = K √(2/ρ) [A √(Δp − p_crack)⁺ + A_seat √Δp]
 *
 * The poppet begins to lift at no drop and is free at twice its crack pressure, so nothing passes against a drop. The root
 * bends to a straight line near zero, as in the orifice law.
 */
export function checkValveLaw({ crack, area, flowCoefficient, seatLeakArea }: CheckValve, { density }: Fluid): Law {
  const velocity = flowCoefficient * Math.sqrt(2 / density);
  const open = velocity * area;
  const seat = velocity * seatLeakArea;
  const corner = crack;
  return (inlet, outlet, result) => {
    const drop = inlet - outlet;
    const above = positivePart(drop - crack, corner);
    const slope =
      open * regularRootSlope(above, LINEAR_DROP) * positivePartSlope(drop - crack, corner) +
      seat * regularRootSlope(drop, LINEAR_DROP);
    result.flow = open * regularRoot(above, LINEAR_DROP) + seat * regularRoot(drop, LINEAR_DROP);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
