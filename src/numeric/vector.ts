/** Vectors in space, for what is worked out once; the engine's inner loop keeps its own figures in registers. */

export type Vector = readonly [number, number, number];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
/** a + factor · b. */
export const plus = (a: Vector, b: Vector, factor = 1): Vector => [a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]];
export const scaled = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const size = (a: Vector): number => sizeOf(a[0], a[1], a[2]);

/**
 * √(x² + y² + z²) as V8's `Math.hypot` has it, to the last bit: relative to the greatest of them, rounding errors made up for (Kahan).
 * Written out because the built-in one puts its arguments on the heap.
 */
export function sizeOf(x: number, y: number, z: number): number {
  const greatest = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (!(greatest > 0 && greatest < Infinity)) return Math.hypot(x, y, z);
  const a = Math.abs(x) / greatest;
  const b = Math.abs(y) / greatest;
  const c = Math.abs(z) / greatest;
  const first = a * a;
  const addend = b * b;
  const two = first + addend;
  const last = c * c - (two - first - addend);
  return Math.sqrt(two + last) * greatest;
}

/** Of length 1; NaN for a vector without length. */
export function unit(a: Vector): Vector {
  const length = size(a);
  return [a[0] / length, a[1] / length, a[2] / length];
}
/** Three parameters from index `i` on. */
export const vectorAt = (p: Float64Array, i: number): Vector => [p[i]!, p[i + 1]!, p[i + 2]!];

/** Some unit vector square to a direction. */
export function anySquare(direction: Vector): Vector {
  return unit(cross(direction, Math.abs(direction[2]) < 0.9 * size(direction) ? [0, 0, 1] : [1, 0, 0]));
}
