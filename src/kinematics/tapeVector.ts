/** Three-vectors recorded on a tape. */
import type { Slot, TapeBuilder } from './tape.ts';

export type Vector = readonly [Slot, Slot, Slot];

export interface VectorRecorder {
  add(a: Vector, b: Vector): Vector;
  subtract(a: Vector, b: Vector): Vector;
  scale(a: Vector, factor: Slot): Vector;
  dot(a: Vector, b: Vector): Slot;
  cross(a: Vector, b: Vector): Vector;
  length(a: Vector): Slot;
  /** Of length 1; NaN for a vector without length. */
  unit(a: Vector): Vector;
  /** The part of `a` square to the unit vector `axis`. */
  square(a: Vector, axis: Vector): Vector;
}

export function recordVectors(tape: TapeBuilder): VectorRecorder {
  const { add: plus, subtract: minus, multiply: times } = tape;
  const zip = (a: Vector, b: Vector, join: (x: Slot, y: Slot) => Slot): Vector => [join(a[0], b[0]), join(a[1], b[1]), join(a[2], b[2])];
  const add = (a: Vector, b: Vector): Vector => zip(a, b, plus);
  const subtract = (a: Vector, b: Vector): Vector => zip(a, b, minus);
  const scale = (a: Vector, factor: Slot): Vector => [times(a[0], factor), times(a[1], factor), times(a[2], factor)];
  const dot = (a: Vector, b: Vector): Slot => plus(plus(times(a[0], b[0]), times(a[1], b[1])), times(a[2], b[2]));
  const length = (a: Vector): Slot => tape.squareRoot(dot(a, a));
  return {
    add,
    subtract,
    scale,
    dot,
    length,
    cross: (a, b) => [
      minus(times(a[1], b[2]), times(a[2], b[1])),
      minus(times(a[2], b[0]), times(a[0], b[2])),
      minus(times(a[0], b[1]), times(a[1], b[0])),
    ],
    unit(a) {
      const size = length(a);
      return [tape.divide(a[0], size), tape.divide(a[1], size), tape.divide(a[2], size)];
    },
    square: (a, axis) => subtract(a, scale(axis, dot(a, axis))),
  };
}
