import type { CubicMetrePerSecond, Pascal } from '../../units';
import { regularRoot, regularRootSlope } from '../regular-root';
import type { Fluid, Law } from './element';

export interface ClearanceLeak {
  /** πDh³/12L of the gap, m³. */
  clearance: number;
}

/**
 * Laminar leakage through a lapped clearance, such as past a plunger.
 *
 *     Q = (π D h³ / 12 L) Δp / μ
 *
 * @source Annular-gap flow, standard result; reference page 2.3 (from memory).
 */
export function clearanceLeakLaw({ clearance }: ClearanceLeak, { viscosity }: Fluid): Law {
  const slope = clearance / viscosity;
  return (inlet, outlet, result) => {
    result.flow = slope * (inlet - outlet);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}

export interface InjectorReturn extends ClearanceLeak {
  /** Control fuel per second at the reference pressure: shots × volume spilled per shot. */
  controlFlow: CubicMetrePerSecond;
  reference: Pascal;
}

/**
 * What a set of injectors sends back: leakage past needles and pistons, and the fuel that works their control valves.
 *
 *     Q = c Δp / μ  +  Q_c √(Δp / p_ref)
 */
export function injectorReturnLaw({ clearance, controlFlow, reference }: InjectorReturn, { viscosity }: Fluid): Law {
  const leak = clearance / viscosity;
  const control = controlFlow / Math.sqrt(reference);
  const bend = reference * 1e-4;
  return (inlet, outlet, result) => {
    const drop = inlet - outlet;
    const slope = leak + control * regularRootSlope(drop, bend);
    result.flow = leak * drop + control * regularRoot(drop, bend);
    result.perInlet = slope;
    result.perOutlet = -slope;
  };
}
