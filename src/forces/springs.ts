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
  fillSpring(build, pose, spring, state);
  const { lever } = spring;
  const own = { lever, closing: state.closing };
  return spring.kind !== 'torsion' && spring.from.kind === 'pin' ? [own, { lever: spring.from.lever, closing: state.fromClosing }] : [own];
}

/** What a spring does as it stands. Filled again for each pose. */
export interface SpringState {
  /** Closing torque on the lever on which it works, N·m; NaN where it cannot be told. */
  closing: number;
  /** The same on the lever of its other end; 0 without one. */
  fromClosing: number;
  /** Force with which it pulls its other end towards its working end, N; none of a torsion spring. */
  x: number;
  y: number;
  z: number;
}

export function createSpringState(): SpringState {
  return { closing: 0, fromClosing: 0, x: 0, y: 0, z: 0 };
}

export function fillSpring(build: Build, pose: Pose, spring: SpringModel, into: SpringState): void {
  const { lever } = spring;
  into.fromClosing = into.x = into.y = into.z = 0;
  if (spring.kind === 'torsion') {
    const opening = build.mechanism.senses[lever]! * pose.rotation[lever]!;
    into.closing = build.parameters[spring.preload]! + rateOf(build, spring) * opening;
    return;
  }
  const { from } = spring;
  const { e, length } = springSpan(build, pose, spring);
  const tension = tensionAt(build, spring, length);
  into.closing = tension === 0 ? 0 : tension * growthAt(build, pose, lever, spring.to, e, length);
  if (tension === 0) return;
  if (from.kind === 'pin') into.fromClosing = -tension * growthAt(build, pose, from.lever, from.pin, e, length);
  const per = tension / length;
  into.x = per * e[0];
  into.y = per * e[1];
  into.z = per * e[2];
}

/** d length / d opening of a lever that carries the working end, m/rad. */
function growthAt(build: Build, pose: Pose, lever: number, pin: number, e: Vector, length: number): number {
  const { parameters: p, mechanism } = build;
  const { axis, pivot } = mechanism.levers[lever]!;
  const arm = minus(turnedAt(build, pose, lever, pin), vectorAt(p, pivot));
  return (mechanism.senses[lever]! * dot(vectorAt(p, axis), cross(arm, e))) / length;
}

const state = createSpringState();

/** Force with which a spring between two places pulls its ends together, N; negative where it presses. NaN where it cannot be told. */
export function springTension(build: Build, pose: Pose, spring: LinearSpringModel): number {
  return tensionAt(build, spring, springSpan(build, pose, spring).length);
}

function tensionAt(build: Build, spring: LinearSpringModel, length: number): number {
  const p = build.parameters;
  if (spring.freeLength === undefined) return NaN;
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
