/**
 * Solves A x = b in place by Gaussian elimination with partial pivoting; `b` becomes x and A is destroyed.
 *
 * Networks here have a dozen unknowns, where a dense elimination beats anything cleverer. Zeroes are skipped, which on
 * a chain of elements is most of the work.
 *
 * @param matrix  n × n, row by row.
 * @returns −1, or the column in which no pivot was left.
 */
export function solveInPlace(matrix: Float64Array, b: Float64Array, n: number): number {
  for (let column = 0; column < n; column++) {
    const pivotRow = largestIn(matrix, column, n);
    const pivot = matrix[pivotRow * n + column] as number;
    if (pivot === 0 || Number.isNaN(pivot)) return column;
    if (pivotRow !== column) swapRows(matrix, b, n, pivotRow, column);
    for (let row = column + 1; row < n; row++) eliminate(matrix, b, n, row, column, pivot);
  }
  for (let row = n - 1; row >= 0; row--) {
    let sum = b[row] as number;
    for (let column = row + 1; column < n; column++)
      sum -= (matrix[row * n + column] as number) * (b[column] as number);
    b[row] = sum / (matrix[row * n + row] as number);
  }
  return -1;
}

function largestIn(matrix: Float64Array, column: number, n: number): number {
  let best = column;
  let size = Math.abs(matrix[column * n + column] as number);
  for (let row = column + 1; row < n; row++) {
    const candidate = Math.abs(matrix[row * n + column] as number);
    if (candidate > size) {
      size = candidate;
      best = row;
    }
  }
  return best;
}

function swapRows(matrix: Float64Array, b: Float64Array, n: number, one: number, other: number): void {
  for (let column = 0; column < n; column++) {
    const held = matrix[one * n + column] as number;
    matrix[one * n + column] = matrix[other * n + column] as number;
    matrix[other * n + column] = held;
  }
  const held = b[one] as number;
  b[one] = b[other] as number;
  b[other] = held;
}

function eliminate(matrix: Float64Array, b: Float64Array, n: number, row: number, column: number, pivot: number): void {
  const entry = matrix[row * n + column] as number;
  if (entry === 0) return;
  const factor = entry / pivot;
  for (let k = column + 1; k < n; k++) {
    matrix[row * n + k] = (matrix[row * n + k] as number) - factor * (matrix[column * n + k] as number);
  }
  b[row] = (b[row] as number) - factor * (b[column] as number);
}
