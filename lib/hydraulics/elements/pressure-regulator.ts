import type { Pascal, SquareMetre } from '../../units';
import { positivePart, positivePartSlope } from '../positive-part';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Fluid, Law } from './element';
import { LINEAR_DROP } from './orifice';

export interface PressureRegulator {
  /** Drop at which it opens. */
  set: Pascal;
  /** Rise of the drop per flow passed, Pa/(m³/s). */
  override: number;
  /** Held open whatever the pressure: a stuck piston, or a seat that leaks. */
  openArea: SquareMetre;
  flowCoefficient: number;
  /** Rounds the corner at the opening pressure. */
  corner: Pascal;
}

/**
 * A spring-loaded spill: shut below its set drop, then a straight override line, beside whatever area cannot close.
 *
 *     Q = (Δp − p_set)⁺ / R  +  K A_open √(2 Δp / ρ)
 *
 * Serves the low-pressure regulator and the rail's relief valve alike.
 */
export function pressureRegulatorLaw(regulator: PressureRegulator, { density }: Fluid): Law {
  const { set, override, corner } = regulator;
  const open = regulator.flowCoefficient * regulator.openArea * Math.sqrt(2 / density);
  return (inlet, outlet, result) => {
    const drop = inlet - outlet;
    const slope = positivePartSlope(drop - set, corner) / override + open * regularRootSlope(drop, LINEAR_DROP);
    result.flow = positivePart(drop - set, corner) / override + open * regularRoot(drop, LINEAR_DROP);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
