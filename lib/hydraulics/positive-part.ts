/**
 * The positive part of x with its corner rounded over `width`, so that a valve that opens has a slope everywhere.
 *
 *     (x + √(x² + w²)) / 2
 *
 * Strictly increasing; tends to max(0, x) away from the corner, where it is w/2.
 */
export function positivePart(x: number, width: number): number {
  const root = Math.sqrt(x * x + width * width);
  // For x < 0 the plain form subtracts two near-equal numbers; this one is the same without the loss.
  return x >= 0 ? (x + root) / 2 : (width * width) / (2 * (root - x));
}

/** d positivePart / dx, between 0 and 1. */
export function positivePartSlope(x: number, width: number): number {
  return positivePart(x, width) / Math.sqrt(x * x + width * width);
}
