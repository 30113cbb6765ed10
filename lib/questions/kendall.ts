/**
 * Kendall's distance between two orders of the same items: how many pairs stand the other way round.
 *
 * @source M. G. Kendall, A new measure of rank correlation, Biometrika 30 (1938) 81–93 (from memory).
 */
export function kendallDistance(order: readonly string[], other: readonly string[]): number {
  const places = other.map((id) => order.indexOf(id));
  return places.reduce((sum, place, index) => sum + places.slice(index + 1).filter((after) => after < place).length, 0);
}

/** Share of pairs that stand the right way round: 1 for the same order, 0 for the reverse. */
export function orderShare(right: readonly string[], given: readonly string[]): number {
  const pairs = (right.length * (right.length - 1)) / 2;
  return pairs === 0 ? 1 : 1 - kendallDistance(right, given) / pairs;
}
