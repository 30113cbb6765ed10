/**
 * The share at which a parabola through what is known of the balances has its least: their size and slope at no step,
 * their size at the step just tried. Kept between a twentieth and a half of that step.
 */
export function cutShare(share: number, merit: number, tried: number): number {
  const least = (share * share * merit) / (tried - merit * (1 - 2 * share));
  return Math.min(share / 2, Math.max(share / 20, least));
}
