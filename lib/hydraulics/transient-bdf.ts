/**
 * Variable-step BDF2 for a stored volume S, h the step and ω = h/h₋₁ its ratio to the one before:
 *
 *     (α₀ S + α₁ S₋₁ + α₂ S₋₂)/h = Q_in     α₀ = (1 + 2ω)/(1 + ω),  α₁ = −(1 + ω),  α₂ = ω²/(1 + ω)
 *
 * As the α add up to nothing, it is α₀ (S − S₋₁) = h Q_in + α₂ (S₋₁ − S₋₂), which rounds less. With ω = 0 it is backward
 * Euler.
 *
 * @source Hairer & Wanner, Solving ODEs II, ch. V (from memory).
 */
export function leadingCoefficient(ratio: number): number {
  return (1 + 2 * ratio) / (1 + ratio);
}

/** α₂. */
export function carriedCoefficient(ratio: number): number {
  return (ratio * ratio) / (1 + ratio);
}

/**
 * Share of the gap between a step and the parabola through the three instants before it that is the step's error.
 *
 *     C/(C + P)     C = (1 + ω)²/(6ω(1 + 2ω)),  P = (h + h₋₁)(h + h₋₁ + h₋₂)/6h²
 *
 * times h³S‴ being the errors of the step and of the parabola, to opposite sides. 2/11 where all steps are equal.
 */
export function errorShareOfParabola(step: number, before: number, beforeThat: number): number {
  const ratio = step / before;
  const own = (1 + ratio) ** 2 / (6 * ratio * (1 + 2 * ratio));
  const parabola = ((step + before) * (step + before + beforeThat)) / (6 * step * step);
  return own / (own + parabola);
}

/**
 * The same for the straight line through two instants, as if the step were backward Euler: h²S″/2 against
 * h (h + h₋₁)S″/2. Overstates the error, as nothing more is known yet.
 */
export function errorShareOfLine(step: number, before: number): number {
  return step / (2 * step + before);
}
