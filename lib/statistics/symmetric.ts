/*
 * Positive definite matrices, size × size, row by row. Only the lower triangle is read and written.
 */

/** Replaces a matrix by its Cholesky factor L, A = L Lᵀ. False where it is not positive definite; then it is spoilt. */
export function factorInPlace(matrix: Float64Array, size: number): boolean {
  for (let row = 0; row < size; row++) {
    const start = row * size;
    for (let column = 0; column <= row; column++) {
      const other = column * size;
      let left = matrix[start + column] as number;
      for (let k = 0; k < column; k++) left -= (matrix[start + k] as number) * (matrix[other + k] as number);
      if (column < row) matrix[start + column] = left / (matrix[other + column] as number);
      else if (left > 0) matrix[start + row] = Math.sqrt(left);
      else return false;
    }
  }
  return true;
}

/** Solves A x = b, A given by its factor. */
export function solveFactored(factor: Float64Array, b: Float64Array): Float64Array {
  const size = b.length;
  const x = Float64Array.from(b);
  for (let row = 0; row < size; row++) {
    let left = x[row] as number;
    for (let k = 0; k < row; k++) left -= (factor[row * size + k] as number) * (x[k] as number);
    x[row] = left / (factor[row * size + row] as number);
  }
  for (let row = size - 1; row >= 0; row--) {
    let left = x[row] as number;
    for (let k = row + 1; k < size; k++) left -= (factor[k * size + row] as number) * (x[k] as number);
    x[row] = left / (factor[row * size + row] as number);
  }
  return x;
}

/** The whole inverse, both triangles, of a matrix given by its factor. */
export function inverseFactored(factor: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    const unit = new Float64Array(size);
    unit[row] = 1;
    inverse.set(solveFactored(factor, unit), row * size);
  }
  return inverse;
}
