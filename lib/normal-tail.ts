const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

/** P(Z > z) of a standard normal Z, to 1e-7. @source Abramowitz & Stegun 26.2.17 (from memory). */
export function normalTail(z: number): number {
  if (z < 0) return 1 - normalTail(-z);
  const t = 1 / (1 + 0.2316419 * z);
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return (Math.exp(-0.5 * z * z) / SQRT_TWO_PI) * poly;
}
