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
  vapourPressure: Pascal;
}

/** Inlet pressure above vapour pressure at which it is 63 % full. Assumed. */
const FILL_PRESSURE: Pascal = 5e3;
/** Rounds the corner at dead head, as a share of the curve. */
const CORNER = 0.02;

/**
 * An electric lift pump: a falling head–flow line that scales with speed, and no backflow.
 *
 *     Q = n Q₀ (1 − Δp / n² H₀)⁺ φ(p_in)     n = speed / rated     φ = 1 − exp(−(p_in − p_v)/p_f), none below p_v
 *
 * Flow ∝ n and head ∝ n² are the affinity laws; φ, ours, keeps it from pulling below vapour pressure. Off, it passes nothing: its bypass is an element of its own.
 *
 * @source Affinity laws: any fluid-machinery text, e.g. White, Fluid Mechanics, ch. 11 (from memory).
 */
export function liftPumpLaw({ freeFlow, deadHead, speed, vapourPressure }: LiftPump): Law {
  const flowAtSpeed = freeFlow * speed;
  const headAtSpeed = deadHead * speed * speed;
  return (inlet, outlet, result) => {
    result.flow = 0;
    result.perInlet = 0;
    result.perOutlet = 0;
    if (headAtSpeed <= 0 || inlet <= vapourPressure) return;
    const empty = Math.exp((vapourPressure - inlet) / FILL_PRESSURE);
    const left = 1 - (outlet - inlet) / headAtSpeed;
    const share = positivePart(left, CORNER);
    const slope = (flowAtSpeed / headAtSpeed) * positivePartSlope(left, CORNER) * (1 - empty);
    result.flow = flowAtSpeed * share * (1 - empty);
    result.perInlet = slope + (flowAtSpeed * share * empty) / FILL_PRESSURE;
    result.perOutlet = -slope;
  };
}
