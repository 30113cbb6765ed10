/**
 * Solves A x = b in place by Gaussian elimination with partial pivoting; `b` becomes x and A is destroyed.
 *
 * Networks here have a dozen unknowns and are nearly chains, so an elimination that keeps to the band and steps over
 * zeroes beats anything cleverer. One function, since every call inside it would cost as much as the arithmetic.
 *
 * @param matrix  n × n, row by row.
 * @param band  A has no entries further than this from its diagonal. Exchanged rows reach twice as far to the right, where
 *   A must be clear; what lies beyond is neither read nor written.
 * @returns −1, or the column in which no pivot was left.
 */
export function solveInPlace(matrix: Float64Array, b: Float64Array, n: number, band: number): number {
  for (let column = 0; column < n; column++) {
    const lowest = Math.min(n - 1, column + band);
    let pivotRow = column;
    let size = Math.abs(matrix[column * n + column] as number);
    for (let row = column + 1; row <= lowest; row++) {
      const candidate = Math.abs(matrix[row * n + column] as number);
      if (candidate > size) {
        size = candidate;
        pivotRow = row;
      }
    }
    if (!(size > 0)) return column;
    let last = Math.min(n - 1, column + 2 * band);
    if (pivotRow !== column) swapRows(matrix, b, n, pivotRow, column, last);
    const base = column * n;
    const perPivot = 1 / (matrix[base + column] as number);
    matrix[base + column] = perPivot;
    // The pivot's row ends here; what lies beyond is zero and stays so.
    while (last > column && matrix[base + last] === 0) last--;
    for (let row = column + 1; row <= lowest; row++) {
      const entry = matrix[row * n + column] as number;
      if (entry === 0) continue;
      const factor = entry * perPivot;
      const start = row * n;
      for (let k = column + 1; k <= last; k++) {
        matrix[start + k] = (matrix[start + k] as number) - factor * (matrix[base + k] as number);
      }
      b[row] = (b[row] as number) - factor * (b[column] as number);
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    let sum = b[row] as number;
    const last = Math.min(n - 1, row + 2 * band);
    for (let k = row + 1; k <= last; k++) sum -= (matrix[row * n + k] as number) * (b[k] as number);
    // The diagonal holds its reciprocals by now.
    b[row] = sum * (matrix[row * n + row] as number);
  }
  return -1;
}

function swapRows(matrix: Float64Array, b: Float64Array, n: number, one: number, other: number, last: number): void {
  for (let column = Math.min(one, other); column <= last; column++) {
    const held = matrix[one * n + column] as number;
    matrix[one * n + column] = matrix[other * n + column] as number;
    matrix[other * n + column] = held;
  }
  const held = b[one] as number;
  b[one] = b[other] as number;
  b[other] = held;
}
