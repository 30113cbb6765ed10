import { type Metre, type Second, type SquareMetre, STANDARD_GRAVITY } from '../../units';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Law } from './element';
import { LINEAR_DROP } from './orifice';

export interface Tank {
  ventArea: SquareMetre;
  flowCoefficient: number;
  /** Fuel above the pick-up. */
  level: Metre;
  /** Air above the fuel, m³. */
  ullage: number;
  /** How long fuel has been drawn since the tank was last at ambient pressure. */
  run: Second;
}

/**
 * A vented tank, from ambient to its pick-up: what fuel leaves, air replaces through the vent, or the air that is there
 * expands; the level adds its head.
 *
 *     Q = K A √(2 (p_v − p) / ρ_air)  +  (V / t)(p_v / p − 1)     p_v = p_amb + ρ g h
 *
 * The second term is one implicit step over the time the engine has been run so: small for a sound vent, and all there is for
 * a blocked one, whose vacuum keeps growing.
 */
export function tankLaw(tank: Tank, fuelDensity: number, airDensity: number): Law {
  const { ventArea, flowCoefficient, level, ullage, run } = tank;
  const scale = flowCoefficient * ventArea * Math.sqrt(2 / airDensity);
  const head = fuelDensity * STANDARD_GRAVITY * level;
  const airPerSecond = ullage / run;
  return (inlet, outlet, result) => {
    const vented = inlet + head;
    const drop = vented - outlet;
    const expands = outlet > 0;
    const slope = scale * regularRootSlope(drop, LINEAR_DROP);
    result.flow = scale * regularRoot(drop, LINEAR_DROP) + (expands ? airPerSecond * (vented / outlet - 1) : 0);
    result.perInlet = slope + (expands ? airPerSecond / outlet : 0);
    result.perOutlet = -slope - (expands ? (airPerSecond * vented) / (outlet * outlet) : 0);
  };
}
