import type { Pascal, RevolutionPerSecond } from '../../units';
import type { Fluid, Law } from './element';

export interface GearPump {
  /** m³ per revolution. */
  displacement: number;
  speed: RevolutionPerSecond;
  /** Wilson's slip coefficient, dimensionless. */
  slipCoefficient: number;
  /** Inlet pressure above vapour pressure at which the gear spaces are 63 % full. */
  fillPressure: Pascal;
}

/**
 * A gear pump: what the teeth carry, less what slips back.
 *
 *     Q = D n φ(p_in) − C_s D Δp / (2π μ)     φ = 1 − exp(−(p_in − p_v)/p_f)
 *
 * Slip does not depend on speed, grows with pressure and falls with viscosity: a worn pump is worst when hot and slow.
 * Below vapour pressure φ goes on along its tangent, which keeps the law monotone and the solver off impossible states.
 *
 * @source Wilson, ASME 48-SA-14 (1948), slip term; the fill curve is ours, assumed.
 */
export function gearPumpLaw(pump: GearPump, { viscosity, vapourPressure }: Fluid & { vapourPressure: Pascal }): Law {
  const carried = pump.displacement * pump.speed;
  const slip = (pump.slipCoefficient * pump.displacement) / (2 * Math.PI * viscosity);
  const { fillPressure } = pump;
  return (inlet, outlet, result) => {
    const depth = (inlet - vapourPressure) / fillPressure;
    const empty = depth > 0 ? Math.exp(-depth) : 1;
    const fill = depth > 0 ? 1 - empty : depth;
    result.flow = carried * fill - slip * (outlet - inlet);
    result.perInlet = (carried * empty) / fillPressure + slip;
    result.perOutlet = -slip;
  };
}
