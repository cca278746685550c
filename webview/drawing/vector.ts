/** Vectors in the frame of the file. */
import type { Triple } from '../../src/protocol/picture.ts';

export const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Triple, b: Triple): Triple => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

export const scaled = (a: Triple, factor: number): Triple => [a[0] * factor, a[1] * factor, a[2] * factor];

/** a + factor · b. */
export const plus = (a: Triple, b: Triple, factor = 1): Triple => [a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]];

export const size = (a: Triple): number => Math.hypot(a[0], a[1], a[2]);

/** Of length 1 along `a`; undefined where `a` is too short to point anywhere. */
export function unit(a: Triple): Triple | undefined {
  const length = size(a);
  return length > SHORTEST ? scaled(a, 1 / length) : undefined;
}

/** Figures of a direction below this are what rounding left. */
const SHORTEST = 1e-9;

/** The part of `a` square to `axis`, which has length 1. */
export const squareTo = (a: Triple, axis: Triple): Triple => plus(a, axis, -dot(a, axis));
