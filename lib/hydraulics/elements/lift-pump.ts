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
/** Rounds the corner at dead head, as a share of the curve; and the one at vapour pressure, in fill pressures. */
const CORNER = 0.02;
const FILL_CORNER = 0.1;
/** Keeps the slope of a pump that stands still finite where nothing flows. */
const LEAST_SQUARE = 1e-4;

/**
 * An electric lift pump: a falling head–flow line that scales with speed, and no backflow. Pulled through faster than it
 * turns, it is a restriction, which is all that is left of it when it stands still.
 *
 *     Q = n Q₀ (1 − Δp / n² H₀)⁺ φ            against a head
 *     Q = Q₀ √(n² + 2|Δp|/H₀) φ               pulled through
 *
 * n = speed / rated; φ = 1 − exp(−(p_in − p_v)/p_f), none below p_v. Flow ∝ n and head ∝ n² are the affinity laws; the second
 * line meets the first with its slope. φ and the second line are ours, assumed.
 *
 * @source Affinity laws: any fluid-machinery text, e.g. White, Fluid Mechanics, ch. 11 (from memory).
 */
export function liftPumpLaw({ freeFlow, deadHead, speed, vapourPressure }: LiftPump): Law {
  const square = speed * speed;
  const headAtSpeed = deadHead * square;
  const still = Math.sqrt(square + LEAST_SQUARE);
  return (inlet, outlet, result) => {
    const rise = outlet - inlet;
    const depth = (inlet - vapourPressure) / FILL_PRESSURE;
    const full = 1 - Math.exp(-positivePart(depth, FILL_CORNER));
    const fullSlope = ((1 - full) * positivePartSlope(depth, FILL_CORNER)) / FILL_PRESSURE;
    let share = 0;
    let slope = 0;
    if (rise <= 0) {
      const root = Math.sqrt(still * still - (2 * rise) / deadHead);
      share = speed + root - still;
      slope = 1 / (deadHead * root);
    } else if (speed > 0) {
      const left = 1 - rise / headAtSpeed;
      share = speed * positivePart(left, CORNER);
      slope = (speed / headAtSpeed) * positivePartSlope(left, CORNER);
    }
    result.flow = freeFlow * share * full;
    result.perInlet = freeFlow * (slope * full + share * fullSlope);
    result.perOutlet = -freeFlow * slope * full;
  };
}
