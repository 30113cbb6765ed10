/** Darcy friction factor and how steeply it changes. Callers own one and lend it, so that nothing is allocated. */
export interface Friction {
  /** Darcy factor f in Δp = f·(L/D)·ρV²/2. */
  factor: number;
  /** d ln f / d ln Re: −1 in laminar flow, up to +2 in transition, −0.25…0 in turbulent flow. */
  exponent: number;
}

/**
 * Up to here the turbulent term is less than 1e-16 of the laminar one for any roughness, so that the factor is 64/Re
 * to the last bit: (Re/8)^12·(Re/37530)^24 = 8e-17.
 */
export const LAMINAR_REYNOLDS = 800;

/** (7/Re)^0.9, the part of the wall term that viscosity makes. */
export function viscousTerm(reynolds: number): number {
  return Math.exp(-0.9 * Math.log(reynolds / 7));
}

/**
 * Darcy friction factor of a round pipe in laminar, transitional and turbulent flow, one smooth curve.
 *
 * f = 8·[(8/Re)^12 + (A + B)^−1.5]^(1/12), A = [−2.457·ln((7/Re)^0.9 + 0.27·ε/D)]^16, B = (37530/Re)^16.
 * Range: Re from `LAMINAR_REYNOLDS` up (below it is 64/Re), ε/D 0…0.05. Within 3.5 % of Colebrook from Re 4000 on;
 * between 2000 and 4000 flow is unsteady and any curve a convention.
 *
 * @param viscous  `viscousTerm(reynolds)`, which a caller that iterates can carry along more cheaply.
 * @source S. W. Churchill, Chemical Engineering 84 (24), 1977, 91–92.
 */
export function frictionAt(reynolds: number, viscous: number, relativeRoughness: number, result: Friction): void {
  const wall = viscous + 0.27 * relativeRoughness;
  const logarithm = -Math.log(wall);
  const a = sixteenthPower(2.457 * logarithm);
  const b = sixteenthPower(37530 / reynolds);
  const sum = a + b;
  // Laminar over turbulent term; factoring the turbulent one out leaves square roots only.
  const laminar = twelfthPower(8 / reynolds) * sum * Math.sqrt(sum);
  result.factor = (8 * twelfthRootNearOne(1 + laminar)) / Math.sqrt(Math.sqrt(Math.sqrt(sum)));
  const turbulentExponent = (2 * b - (1.8 * a * viscous) / (wall * logarithm)) / sum;
  result.exponent = (turbulentExponent - laminar) / (1 + laminar);
}

/** The factor alone, at any Reynolds number above zero. */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  if (reynolds <= LAMINAR_REYNOLDS) return 64 / reynolds;
  const friction: Friction = { factor: 0, exponent: 0 };
  frictionAt(reynolds, viscousTerm(reynolds), relativeRoughness, friction);
  return friction.factor;
}

function twelfthPower(x: number): number {
  const fourth = x * x * x * x;
  return fourth * fourth * fourth;
}

function sixteenthPower(x: number): number {
  const fourth = x * x * x * x;
  return fourth * fourth * fourth * fourth;
}

/** Twelfth root; from Re 4000 on its argument is so near 1 that three terms of the series are exact. */
function twelfthRootNearOne(x: number): number {
  const excess = x - 1;
  if (excess < 1e-4) return 1 + excess * (1 / 12 - excess * (11 / 288 - excess * (253 / 10368)));
  return Math.cbrt(Math.sqrt(Math.sqrt(x)));
}
