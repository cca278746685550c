/** Three-vectors for the second methods of the tests; nothing here comes from the engine. */

export type Vector = readonly [number, number, number];

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const size = (a: Vector): number => Math.sqrt(dot(a, a));
export const unit = (a: Vector): Vector => times(a, 1 / size(a));
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** The part of `a` square to the unit vector `axis`. */
export const square = (a: Vector, axis: Vector): Vector => minus(a, times(axis, dot(a, axis)));

/** `a` turned by `angle`, rad, about the unit vector `axis` (O. Rodrigues' formula). */
export function turned(a: Vector, axis: Vector, angle: number): Vector {
  const c = Math.cos(angle);
  return plus(plus(times(a, c), times(cross(axis, a), Math.sin(angle))), times(axis, dot(axis, a) * (1 - c)));
}
