/**
 * The positive part of x with its corner rounded, so that a valve that opens has a slope that does not jump.
 *
 *     0 for x ≤ −w,   (x + w)² / 4w between,   x for x ≥ w
 *
 * Never falls; exact outside the corner, so that a shut valve passes nothing.
 */
export function positivePart(x: number, width: number): number {
  if (x >= width) return x;
  if (x <= -width) return 0;
  return (x + width) ** 2 / (4 * width);
}

/** d positivePart / dx, between 0 and 1. */
export function positivePartSlope(x: number, width: number): number {
  if (x >= width) return 1;
  if (x <= -width) return 0;
  return (x + width) / (2 * width);
}
