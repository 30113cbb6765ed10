import type { CubicMetrePerSecond, Pascal } from '../../units';
import { positivePart, positivePartSlope } from '../positive-part';
import type { Law } from './element';

export interface LiftPump {
  /** Flow against no head at rated speed. */
  freeFlow: CubicMetrePerSecond;
  /** Head at no flow at rated speed. */
  deadHead: Pascal;
  /** Speed relative to rated; follows the supply voltage. 0 is off. */
  speed: number;
}

/** Rounds the corner at dead head, as a share of the curve. */
const CORNER = 0.02;

/**
 * An electric lift pump: a falling head–flow line that scales with speed, and no backflow.
 *
 *     Q = n Q₀ (1 − Δp / n² H₀)⁺     n = speed / rated
 *
 * Flow ∝ n and head ∝ n² are the affinity laws. Off, it passes nothing: its bypass is an element of its own.
 *
 * @source Affinity laws: any fluid-machinery text, e.g. White, Fluid Mechanics, ch. 11 (from memory).
 */
export function liftPumpLaw({ freeFlow, deadHead, speed }: LiftPump): Law {
  const flowAtSpeed = freeFlow * speed;
  const headAtSpeed = deadHead * speed * speed;
  return (inlet, outlet, result) => {
    const left = headAtSpeed > 0 ? 1 - (outlet - inlet) / headAtSpeed : 0;
    const slope = headAtSpeed > 0 ? (flowAtSpeed / headAtSpeed) * positivePartSlope(left, CORNER) : 0;
    result.flow = flowAtSpeed * positivePart(left, CORNER);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
