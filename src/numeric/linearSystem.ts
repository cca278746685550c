/** Small systems of linear equations, by elimination with full pivoting. */

/**
 * Solves A x = b. Equations that follow from the others are left out, and the unknowns that they leave open are 0.
 * @param a rows one after another, n × n; overwritten @param b overwritten by x
 */
export function solveLinear(a: Float64Array, b: Float64Array, n: number): void {
  const order = Array.from({ length: n }, (_, i) => i);
  let rank = n;
  let largest = 0;
  for (let step = 0; step < n; step++) {
    let best = 0;
    let row = step;
    let column = step;
    for (let i = step; i < n; i++) {
      for (let j = step; j < n; j++) {
        const size = Math.abs(a[i * n + j]!);
        if (size > best) [best, row, column] = [size, i, j];
      }
    }
    if (step === 0) largest = best;
    if (!(best > SINGULAR * largest)) {
      rank = step;
      break;
    }
    if (row !== step) {
      for (let j = 0; j < n; j++) swap(a, row * n + j, step * n + j);
      swap(b, row, step);
    }
    if (column !== step) {
      for (let i = 0; i < n; i++) swap(a, i * n + column, i * n + step);
      [order[step], order[column]] = [order[column]!, order[step]!];
    }
    for (let i = step + 1; i < n; i++) {
      const factor = a[i * n + step]! / a[step * n + step]!;
      if (factor === 0) continue;
      for (let j = step; j < n; j++) a[i * n + j] = a[i * n + j]! - factor * a[step * n + j]!;
      b[i] = b[i]! - factor * b[step]!;
    }
  }
  const solution = new Float64Array(n);
  for (let i = rank - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let j = i + 1; j < rank; j++) sum -= a[i * n + j]! * solution[j]!;
    solution[i] = sum / a[i * n + i]!;
  }
  for (let i = 0; i < n; i++) b[order[i]!] = solution[i]!;
}

function swap(values: Float64Array, i: number, j: number): void {
  const kept = values[i]!;
  values[i] = values[j]!;
  values[j] = kept;
}

/** Of the largest entry; what is smaller is rounding. */
const SINGULAR = 1e-13;
