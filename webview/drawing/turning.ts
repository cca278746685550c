/** Points that turn with a lever, or stand still, as the paper sees them: P(φ) = base + cos φ · perp + sin φ · cross, projected once. */
import type { PinPlace, Triple, TurningPoint } from '../../src/protocol/picture.ts';
import { frameOf, type Pose } from './pose.ts';
import { MM_PER_M, type Projection } from './projection.ts';
import type { Picture } from '../../src/protocol/picture.ts';
import { cross, dot, plus, scaled } from './vector.ts';

/** A point on the paper, mm: x + cos φ · px + sin φ · cx, and so for y. */
export interface Point {
  /** Index of its lever; one beyond the last for what does not turn. */
  readonly lever: number;
  readonly x: number;
  readonly y: number;
  readonly px: number;
  readonly py: number;
  readonly cx: number;
  readonly cy: number;
}

export function turningPoint(view: Projection, lever: number, at: TurningPoint): Point {
  const { right, up } = view;
  const along = (way: Triple, first: number) => MM_PER_M * (way[0] * at[first]! + way[1] * at[first + 1]! + way[2] * at[first + 2]!);
  return { lever, x: along(right, 0), px: along(right, 3), cx: along(right, 6), y: -along(up, 0), py: -along(up, 3), cy: -along(up, 6) };
}

export function fixedPoint(view: Projection, picture: Picture, at: Triple): Point {
  return turningPoint(view, frameOf(picture), [...at, 0, 0, 0, 0, 0, 0]);
}

export const isPinPlace = (at: Triple | PinPlace): at is PinPlace => 'lever' in at;

export const pointOf = (view: Projection, picture: Picture, at: Triple | PinPlace): Point =>
  isPinPlace(at) ? turningPoint(view, at.lever, at.at) : fixedPoint(view, picture, at);

/** mm */
export const xAt = (point: Point, pose: Pose): number => point.x + pose.cos[point.lever]! * point.px + pose.sin[point.lever]! * point.cx;
export const yAt = (point: Point, pose: Pose): number => point.y + pose.cos[point.lever]! * point.py + pose.sin[point.lever]! * point.cy;

/** At a rotation of its own, rad. */
export const xTurned = (point: Point, rotation: number): number => point.x + Math.cos(rotation) * point.px + Math.sin(rotation) * point.cx;
export const yTurned = (point: Point, rotation: number): number => point.y + Math.cos(rotation) * point.py + Math.sin(rotation) * point.cy;

/** Where a turning point stands in space at a rotation, m. */
export function inSpaceAt(at: TurningPoint, rotation: number): Triple {
  const c = Math.cos(rotation);
  const s = Math.sin(rotation);
  const figure = (i: number) => at[i]! + c * at[i + 3]! + s * at[i + 6]!;
  return [figure(0), figure(1), figure(2)];
}

/** `place` turned about the axis through `pivot` by `angle`, by Rodrigues' formula. @param axis of length 1 */
export function turnedAbout(place: Triple, pivot: Triple, axis: Triple, angle: number): Triple {
  const arm = plus(place, pivot, -1);
  const along = scaled(axis, dot(axis, arm));
  const out = plus(arm, along, -1);
  return plus(plus(plus(pivot, along), out, Math.cos(angle)), cross(axis, out), Math.sin(angle));
}
