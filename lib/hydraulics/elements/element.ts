import type { CubicMetrePerSecond, Pascal } from '../../units';

/**
 * What an element's law says at one pair of end pressures. The solver owns one of these and lends it to every law, so
 * that the inner loop allocates nothing.
 */
export interface FlowAndSlopes {
  /** Positive in the element's normal direction, inlet to outlet. */
  flow: CubicMetrePerSecond;
  /** ∂flow/∂inlet, never negative. */
  perInlet: number;
  /** ∂flow/∂outlet, never positive. */
  perOutlet: number;
  /** ∂flow/∂demand, never negative. Zero before each call: only a law that answers to the controller sets it. */
  perDemand: number;
}

/**
 * An element as the solver sees it: flow and slopes for given end pressures (absolute), written into `result`.
 *
 * Flow never falls when the inlet pressure rises and never rises when the outlet pressure rises; a property test holds
 * every law to it. `demand` is the controller's opening of a metering valve, 0…1.
 */
export type Law = (inlet: Pascal, outlet: Pascal, result: FlowAndSlopes, demand: number) => void;

/** The fuel as one element sees it. */
export interface Fluid {
  /** kg/m³ */
  density: number;
  /** Dynamic viscosity, Pa·s. */
  viscosity: number;
}
