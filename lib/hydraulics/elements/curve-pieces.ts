import type { CurvePoint } from './curve-point';

/**
 * Pieces of a pipe's curve, each a cubic from one point to the next. Row by row in one array: as objects they would take
 * four times the room, and following a dozen pipes is mostly a matter of reaching their numbers.
 */
export class CurvePieces {
  /**
   * Seven numbers a piece: the losses at its ends, c₀…c₃ of reynolds = c₀ + u·(c₁ + u·(c₂ + u·c₃)) with u = loss − from,
   * and its index. Ahead of the first stand the ends of none: no loss lies between them. A plain array, as most pipes
   * need a few pieces only and a typed one costs as much as evaluating those.
   */
  readonly rows: number[] = [Number.NaN, Number.NaN];
  private readonly placeOf: (number | undefined)[] = [];

  /** Where in `rows` the piece begins, if it was put in. */
  place(index: number): number | undefined {
    return this.placeOf[index];
  }

  /** Puts in the cubic that takes both points' values and slopes, and returns where it begins. */
  join(index: number, below: CurvePoint, above: CurvePoint): number {
    const perWidth = 1 / (above.loss - below.loss);
    const mean = (above.reynolds - below.reynolds) * perWidth;
    const square = (3 * mean - 2 * below.slope - above.slope) * perWidth;
    const cube = (below.slope + above.slope - 2 * mean) * perWidth * perWidth;
    return this.put(index, below, above.loss, square, cube);
  }

  /** Puts in the straight line on from a last point. */
  extend(index: number, last: CurvePoint): number {
    return this.put(index, last, Number.POSITIVE_INFINITY, 0, 0);
  }

  private put(index: number, { loss, reynolds, slope }: CurvePoint, to: number, square: number, cube: number): number {
    const place = this.rows.length;
    this.rows.push(loss, to, reynolds, slope, square, cube, index);
    this.placeOf[index] = place;
    return place;
  }
}
