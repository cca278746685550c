/**
 * Singular values of small systems of linear equations, and least squares by them.
 *
 * Householder reflections bring the rows down to a triangle of as many as there are unknowns; then the columns of the triangle are turned
 * in pairs until all are square to each other: the one-sided method of M. R. Hestenes, Journal of the Society for Industrial and Applied
 * Mathematics 6 (1958) 51, from memory. Small singular values come out as exactly as large ones, since nothing is squared before.
 */

/** R with A = Q R, and Qᵀ b. */
export interface Triangle {
  readonly n: number;
  /** n × n, rows one after another; 0 below the diagonal. */
  readonly r: Float64Array;
  /** The first n figures of Qᵀ b. */
  readonly c: Float64Array;
}

/** @param a rows one after another, as many as b has figures, each of n; neither is changed */
export function triangleOf(a: Float64Array, b: Float64Array, n: number): Triangle {
  const rows = b.length;
  // Column by column: each reflection then goes along memory.
  const columns = Array.from({ length: n }, (_, j) => Float64Array.from({ length: rows }, (__, i) => a[i * n + j]!));
  const right = Float64Array.from(b);
  const r = new Float64Array(n * n);
  for (let k = 0; k < Math.min(n, rows); k++) {
    const mirror = columns[k]!;
    let square = 0;
    for (let i = k; i < rows; i++) square += mirror[i]! * mirror[i]!;
    const size = Math.sqrt(square);
    // A column of nothing needs no reflection, but its row holds a part of the columns after it.
    if (size > 0) {
      const head = mirror[k]! > 0 ? -size : size;
      const half = square - mirror[k]! * head;
      mirror[k] = mirror[k]! - head;
      for (let j = k + 1; j < n; j++) reflect(columns[j]!, mirror, k, half);
      reflect(right, mirror, k, half);
      r[k * n + k] = head;
    }
    for (let j = k + 1; j < n; j++) r[k * n + j] = columns[j]![k]!;
  }
  const c = new Float64Array(n);
  c.set(right.subarray(0, Math.min(n, rows)));
  return { n, r, c };
}

function reflect(column: Float64Array, mirror: Float64Array, from: number, half: number): void {
  let along = 0;
  for (let i = from; i < mirror.length; i++) along += mirror[i]! * column[i]!;
  const times = along / half;
  for (let i = from; i < mirror.length; i++) column[i] = column[i]! - times * mirror[i]!;
}

export interface Singular {
  readonly n: number;
  /** Falling, not negative. */
  readonly values: Float64Array;
  /** One for each value, of n figures and length 1: what of the unknowns it belongs to. */
  readonly directions: readonly Float64Array[];
  /** A times each direction, turned by Qᵀ. */
  readonly images: readonly Float64Array[];
}

/** Of R, which are those of A. */
export function singularOf({ n, r }: Pick<Triangle, 'n' | 'r'>): Singular {
  const images = Array.from({ length: n }, (_, j) => Float64Array.from({ length: n }, (__, i) => r[i * n + j]!));
  const directions = Array.from({ length: n }, (_, j) => Float64Array.from({ length: n }, (__, i) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let turned = false;
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++) {
        const [one, other] = [images[i]!, images[j]!];
        const along = dot(one, other);
        const [p, q] = [dot(one, one), dot(other, other)];
        if (Math.abs(along) <= SQUARE * Math.sqrt(p * q) || along === 0) continue;
        turned = true;
        const zeta = (q - p) / (2 * along);
        const tangent = (zeta < 0 ? -1 : 1) / (Math.abs(zeta) + Math.sqrt(1 + zeta * zeta));
        const cosine = 1 / Math.sqrt(1 + tangent * tangent);
        turn(one, other, cosine, cosine * tangent);
        turn(directions[i]!, directions[j]!, cosine, cosine * tangent);
      }
    }
    if (!turned) break;
  }
  const sizes = images.map((image) => Math.sqrt(dot(image, image)));
  const order = sizes.map((_, k) => k).sort((i, j) => sizes[j]! - sizes[i]!);
  return {
    n,
    values: Float64Array.from(order, (k) => sizes[k]!),
    directions: order.map((k) => directions[k]!),
    images: order.map((k) => images[k]!),
  };
}

const MOST_SWEEPS = 60;
/** Cosine of the angle between two columns that count as square. */
const SQUARE = 1e-15;

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i]! * other[i]!;
  return sum;
}

function turn(one: Float64Array, other: Float64Array, cosine: number, sine: number): void {
  for (let i = 0; i < one.length; i++) {
    const [a, b] = [one[i]!, other[i]!];
    one[i] = cosine * a - sine * b;
    other[i] = sine * a + cosine * b;
  }
}

/**
 * The x for which A x is nearest to b; of several the shortest.
 * @param c Qᵀ b @param least values of this size and below count as nothing
 */
export function shortestSolution({ n, values, directions, images }: Singular, c: Float64Array, least: number): Float64Array {
  const x = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const value = values[k]!;
    if (!(value > least)) continue;
    const along = dot(images[k]!, c) / (value * value);
    for (let i = 0; i < n; i++) x[i] = x[i]! + along * directions[k]![i]!;
  }
  return x;
}

/**
 * (AᵀA)⁻¹, n × n: with equations of variance 1 the covariance of the unknowns. What belongs to values of the size `least` and below is left
 * out of it: an unknown with a part in that has no variance at all (`isOpen`).
 */
export function covarianceOf({ n, values, directions }: Singular, least: number): Float64Array {
  const covariance = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    if (!(values[k]! > least)) continue;
    const variance = 1 / (values[k]! * values[k]!);
    const along = directions[k]!;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) covariance[i * n + j] = covariance[i * n + j]! + variance * along[i]! * along[j]!;
    }
  }
  return covariance;
}

/** Whether the equations leave an unknown open: it has a part in a direction whose value is of the size `least` or below. */
export function isOpen({ n, values, directions }: Singular, unknown: number, least: number): boolean {
  let part = 0;
  for (let k = 0; k < n; k++) if (!(values[k]! > least)) part += directions[k]![unknown]! ** 2;
  return part > NO_PART;
}

/** Of 1, squared. */
const NO_PART = 1e-8;
