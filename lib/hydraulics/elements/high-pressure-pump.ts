import type { CubicMetrePerSecond, Pascal } from '../../units';
import type { Law } from './element';

export interface HighPressurePump {
  /** Displacement × speed × what wear has left. */
  capacity: CubicMetrePerSecond;
  /** Chamber pressure above vapour pressure at which the plungers fill. */
  fillPressure: Pascal;
  vapourPressure: Pascal;
}

/**
 * Plungers that fill from a metered chamber: starved, they deliver only what the chamber holds.
 *
 *     Q = C φ(s)     φ = s / (1 + s⁴)^¼     s = (p_chamber − p_v) / p_f
 *
 * Nearly straight while starved, nearly 1 when the chamber is full. What leaks past the plungers is an element of its
 * own, since it goes to the return and not back to the chamber. Rail pressure does not move the displacement.
 * The fill curve is ours, assumed.
 */
export function highPressurePumpLaw({ capacity, fillPressure, vapourPressure }: HighPressurePump): Law {
  return (inlet, _outlet, result) => {
    const s = (inlet - vapourPressure) / fillPressure;
    const s4 = s > 0 ? s * s * s * s : 0;
    const knee = 1 / Math.sqrt(Math.sqrt(1 + s4));
    result.flow = capacity * s * knee;
    result.perInlet = (capacity * knee) / (1 + s4) / fillPressure;
    result.perOutlet = 0;
  };
}
