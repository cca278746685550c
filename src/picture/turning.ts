/** Points fixed to a lever, as the view turns them: base, perp and cross. */
import type { Place } from '../definition/definition.ts';
import type { Build } from '../kinematics/build.ts';
import { cross, dot, minus, plus, type Vector } from '../numeric/vector.ts';
import type { PinPlace, Triple, TurningPoint } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';

/** A point of the engine's, nine parameters; undefined where it has no place. */
export function turningPoint({ parameters }: Build, from: number): TurningPoint | undefined {
  const figures = Array.from(parameters.subarray(from, from + 9));
  return figures.every(Number.isFinite) ? figures : undefined;
}

/** A pin on a lever of the mechanism; undefined where either is not drawn. */
export function pinPlace({ placeOf }: Drawable, build: Build, lever: number, pin: number): PinPlace | undefined {
  const place = placeOf(lever);
  const at = turningPoint(build, pin);
  return place === undefined || at === undefined ? undefined : { lever: place, at };
}

/** A point that is drawn at `at`, turning about an axis of length 1; undefined where it has no place. */
export function turningAbout(pivot: Vector, axis: Vector, at: Vector): TurningPoint | undefined {
  const from = minus(at, pivot);
  const base = plus(pivot, axis, dot(from, axis));
  const perp = minus(at, base);
  const figures = [...base, ...perp, ...cross(axis, perp)];
  return figures.every(Number.isFinite) ? figures : undefined;
}

/** Drawn place, m. */
export function tripleOf({ x, y, z }: Place): Triple {
  return [x.nominal, y.nominal, z?.nominal ?? 0];
}
