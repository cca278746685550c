/** The frame in which the polar places of a lever's pins are given, in the drawn position. */
import type { Direction, Lever, Place } from '../definition/definition.ts';
import type { Triple } from '../protocol/picture.ts';
import { cross, dot, lengthOf, minus, times } from './triples.ts';

/** u along the axis, e₁ the reference projected square to it, e₂ = u × e₁; each of length 1. */
export interface LeverFrame {
  readonly pivot: Triple;
  readonly axis: Triple;
  readonly first: Triple;
  readonly second: Triple;
}

/** Undefined where the axis or the reference has no direction. */
export function leverFrame({ pivot, axis: given, reference }: Lever): LeverFrame | undefined {
  const at = placeOf(pivot);
  const axis = unit(
    given === undefined ? [0, 0, 1] : given.kind === 'direction' ? directionOf(given.direction) : minus(placeOf(given.place), at),
  );
  if (axis === undefined) return undefined;
  const isAlongX = Math.hypot(axis[1], axis[2]) <= ALONG * Math.abs(axis[0]);
  const from: Triple = reference === undefined ? (isAlongX ? [0, 1, 0] : [1, 0, 0]) : directionOf(reference);
  const first = unit(minus(from, times(axis, dot(from, axis))));
  return first && { pivot: at, axis, first, second: cross(axis, first) };
}

/** A direction whose part square to another is smaller than this, relative, gives no reference. */
const ALONG = 1e-9;

/** m */
export function placeOf({ x, y, z }: Place): Triple {
  return [x.nominal, y.nominal, z?.nominal ?? 0];
}

function directionOf({ x, y, z }: Direction): Triple {
  return [x.nominal, y.nominal, z?.nominal ?? 0];
}

function unit(vector: Triple): Triple | undefined {
  const size = lengthOf(vector);
  return size > 0 && Number.isFinite(size) ? times(vector, 1 / size) : undefined;
}
