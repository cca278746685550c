/** Arithmetic of places and directions. */
import type { Triple } from '../protocol/picture.ts';

export function plus(a: Triple, b: Triple): Triple {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function minus(a: Triple, b: Triple): Triple {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function times(a: Triple, factor: number): Triple {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Triple, b: Triple): Triple {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function lengthOf(a: Triple): number {
  return Math.hypot(...a);
}
