/** Darcy friction factor and how steeply it changes. Callers own one and lend it, so that nothing is allocated. */
export interface Friction {
  /** Darcy factor f in Δp = f·(L/D)·ρV²/2. */
  factor: number;
  /** d ln f / d ln Re: −1 in laminar flow, up to about +2 in transition, −0.25…0 in turbulent flow. */
  exponent: number;
}

/**
 * Up to here the turbulent term is less than 1e-16 of the laminar one for any roughness, so that the factor is 64/Re
 * to the last bit: (Re/8)^12·(Re/37530)^24 = 8e-17.
 */
export const LAMINAR_REYNOLDS = 800;

/**
 * Darcy friction factor of a round pipe in laminar, transitional and turbulent flow, one smooth curve.
 *
 * f = 8·[(8/Re)^12 + (A + B)^−1.5]^(1/12), A = [−2.457·ln((7/Re)^0.9 + 0.27·ε/D)]^16, B = (37530/Re)^16.
 * Range: any Re > 0, ε/D 0…0.05. Within 3.5 % of Colebrook from Re 4000 on; transition is a convention.
 *
 * @source S. W. Churchill, Chemical Engineering 84 (24), 1977, 91–92.
 */
export function frictionAt(reynolds: number, relativeRoughness: number, result: Friction): void {
  if (reynolds <= LAMINAR_REYNOLDS) {
    result.factor = 64 / reynolds;
    result.exponent = -1;
    return;
  }
  const laminar = twelfthPower(8 / reynolds);
  const smooth = Math.exp(-0.9 * Math.log(reynolds / 7));
  const wall = smooth + 0.27 * relativeRoughness;
  const logarithm = -Math.log(wall);
  const a = sixteenthPower(2.457 * logarithm);
  const b = sixteenthPower(37530 / reynolds);
  const turbulent = 1 / ((a + b) * Math.sqrt(a + b));
  const sum = laminar + turbulent;
  result.factor = 8 * Math.cbrt(Math.sqrt(Math.sqrt(sum)));
  const turbulentExponent = (2 * b - (1.8 * a * smooth) / (wall * logarithm)) / (a + b);
  result.exponent = (turbulent * turbulentExponent - laminar) / sum;
}

/** The factor alone. */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  const friction: Friction = { factor: 0, exponent: 0 };
  frictionAt(reynolds, relativeRoughness, friction);
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
