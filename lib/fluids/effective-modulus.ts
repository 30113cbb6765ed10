import type { Pascal } from '../units';

/** A liquid with bubbles in it. */
export interface GassyLiquid {
  /** Of the liquid alone, at the pressure asked about. */
  liquidModulus: Pascal;
  /** Share of the volume that is free gas at ambient pressure, 0…1. */
  gasShareAtAmbient: number;
  ambient: Pascal;
  /** 1 for bubbles that keep the liquid's temperature, 1.4 for air that has no time to. */
  polytropic: number;
}

/**
 * Bulk modulus of a liquid that carries free gas: the gas is squeezed along p·Vⁿ and none of it dissolves.
 *
 * K = (1 + x)/(1/K_l + x/(n·p)), x = a0/(1 − a0)·(p0/p)^(1/n) the volume of gas per volume of liquid at pressure p, a0 its
 * share at ambient pressure p0. Without gas it is K_l exactly. Range: absolute p above zero, and n·p well below K_l.
 *
 * @source Wylie & Streeter, Fluid Transients; Nykänen et al., Int. J. Fluid Power (2000), from memory. The same two
 * springs in series as Rabie, Fluid Power Engineering, equations 2.55–2.57, with the share taken at p.
 */
export function effectiveModulus(
  { liquidModulus, gasShareAtAmbient, ambient, polytropic }: GassyLiquid,
  pressure: Pascal,
): Pascal {
  const gas = (gasShareAtAmbient / (1 - gasShareAtAmbient)) * (ambient / pressure) ** (1 / polytropic);
  return (liquidModulus * (1 + gas)) / (1 + (gas * liquidModulus) / (polytropic * pressure));
}
