/**
 * Springs: the torque of each about the levers on which it works, as it stands.
 *
 * Torsion: preload + rate · opening. Between two places, with e from its fixed to its working end and ℓ = |e|:
 *     extension    T = 0 for ℓ < ℓ₀, else initial tension + rate · (ℓ − ℓ₀)
 *     compression  T = −rate · max(0, ℓ₀ − ℓ)
 * T pulls the ends together. Its energy grows by T dℓ, so that it closes a lever by T ∂ℓ/∂opening.
 */
import type { Build } from '../kinematics/build.ts';
import type { LinearSpringModel, SpringModel } from '../kinematics/attached.ts';
import { turnedAt } from '../kinematics/poseGeometry.ts';
import type { Pose } from '../kinematics/pose.ts';
import { rateOf } from './wire/rate.ts';
import { cross, dot, minus, size, vectorAt, type Vector } from '../numeric/vector.ts';

/** What a spring does to one lever. */
export interface SpringTorque {
  readonly lever: number;
  /** About the lever's axis, N·m, positive where it closes; NaN where it cannot be told. */
  readonly closing: number;
}

/** On the lever on which it works first; a spring between two levers has a second one. */
export function springTorques(build: Build, pose: Pose, spring: SpringModel): readonly SpringTorque[] {
  const { lever } = spring;
  if (spring.kind === 'torsion') {
    const p = build.parameters;
    const opening = build.mechanism.senses[lever]! * pose.rotation[lever]!;
    return [{ lever, closing: p[spring.preload]! + rateOf(build, spring) * opening }];
  }
  const tension = springTension(build, pose, spring);
  const { e, length } = springSpan(build, pose, spring);
  const at = (of: number, pin: number, way: 1 | -1): SpringTorque => {
    const axis = vectorAt(build.parameters, build.mechanism.levers[of]!.axis);
    const arm = minus(turnedAt(build, pose, of, pin), vectorAt(build.parameters, build.mechanism.levers[of]!.pivot));
    const growth = (way * dot(axis, cross(arm, e))) / length;
    return { lever: of, closing: tension === 0 ? 0 : build.mechanism.senses[of]! * tension * growth };
  };
  const { from } = spring;
  return [at(lever, spring.to, 1), ...(from.kind === 'pin' ? [at(from.lever, from.pin, -1)] : [])];
}

/** Force with which a spring between two places pulls its ends together, N; negative where it presses. NaN where it cannot be told. */
export function springTension(build: Build, pose: Pose, spring: LinearSpringModel): number {
  const p = build.parameters;
  if (spring.freeLength === undefined) return NaN;
  const { length } = springSpan(build, pose, spring);
  const extension = length - p[spring.freeLength]!;
  if (Number.isNaN(extension)) return NaN;
  const rate = rateOf(build, spring);
  if (spring.kind === 'compression') return extension < 0 ? rate * extension : 0;
  return extension < 0 ? 0 : p[spring.initialTension]! + rate * extension;
}

/** From its fixed to its working end, and the distance, m. */
export function springSpan(build: Build, pose: Pose, spring: LinearSpringModel): { readonly e: Vector; readonly length: number } {
  const { from } = spring;
  const start = from.kind === 'place' ? vectorAt(build.parameters, from.place) : standing(build, pose, from.lever, from.pin);
  const e = minus(standing(build, pose, spring.lever, spring.to), start);
  return { e, length: size(e) };
}

/** A pin as it stands; NaN where its lever cannot be assembled. */
function standing(build: Build, pose: Pose, lever: number, pin: number): Vector {
  return Number.isNaN(pose.rotation[lever]!) ? [NaN, NaN, NaN] : turnedAt(build, pose, lever, pin);
}
