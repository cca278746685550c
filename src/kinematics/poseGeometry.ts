/**
 * Places, directions and angles read off a pose, in metres and radians.
 */
import { cross, dot, minus, plus, unit, vectorAt, type Vector } from '../numeric/vector.ts';
import type { Build } from './build.ts';
import type { CableEndModel, CableJoint, RodJoint } from './model.ts';
import type { Pose } from './pose.ts';
import { drumAt, type DrumPoint } from './joints/drum.ts';

/** A point or direction fixed to a lever (nine parameters), as it stands. */
export function turnedAt(build: Build, pose: Pose, lever: number, turning: number): Vector {
  const p = build.parameters;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  const along = (axis: number): number => p[turning + axis]! + c * p[turning + 3 + axis]! + s * p[turning + 6 + axis]!;
  return [along(0), along(1), along(2)];
}

/**
 * asin(|u·(r × e)| / |r|): how squarely a pull along the unit vector `e` turns a lever about its axis u by an arm r.
 * Computed from all three parts of e, so that it is exact near 90° too.
 */
export function armAngle(build: Build, pose: Pose, lever: number, pin: number, e: Vector): number {
  const p = build.parameters;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  const perp = vectorAt(p, pin + 3);
  const turned = vectorAt(p, pin + 6);
  const arm = plus([c * perp[0], c * perp[1], c * perp[2]], turned, s);
  const tangent = plus([c * turned[0], c * turned[1], c * turned[2]], perp, -s);
  const along = dot(e, tangent);
  const rest = cross(e, unit(tangent));
  return Math.atan2(Math.abs(along) / Math.hypot(arm[0], arm[1], arm[2]), Math.hypot(rest[0], rest[1], rest[2]));
}

/** From the driving pin to the driven one, of length 1. */
export function rodDirection(build: Build, pose: Pose, joint: RodJoint): Vector {
  return unit(minus(turnedAt(build, pose, joint.driven, joint.drivenPin), turnedAt(build, pose, joint.driver, joint.driverPin)));
}

/**
 * The free inner from its housing end to the pin or the drum's rim, not of unit length. Undefined where the lever cannot be assembled
 * or the housing end lies within the drum.
 */
export function innerAt(build: Build, pose: Pose, joint: CableJoint, which: 'leaves' | 'enters'): Vector | undefined {
  const end: CableEndModel | undefined = which === 'leaves' ? joint.driverEnd : joint.drivenEnd;
  const lever = which === 'leaves' ? joint.driver : joint.driven;
  if (end === undefined || lever === undefined || Number.isNaN(pose.rotation[lever]!)) return undefined;
  const p = build.parameters;
  const housing = vectorAt(p, end.housing);
  if (end.kind === 'pin') return minus(turnedAt(build, pose, lever, end.pin), housing);
  const model = build.mechanism.levers[lever]!;
  const axis = vectorAt(p, model.axis);
  const from = minus(housing, vectorAt(p, model.pivot));
  const height = dot(from, axis);
  const flat = plus(from, axis, -height);
  const distance = Math.hypot(flat[0], flat[1], flat[2]);
  drumAt(end.drum, p, build.mechanism.senses[lever]! * pose.rotation[lever]!, point);
  // The rim point lies where the pull turns the drum the way it wraps; a driving drum takes cable in, so on the other side.
  const side = end.drum.wraps * (which === 'enters' ? 1 : -1);
  const sine = (side * point.radius) / distance;
  if (!(Math.abs(sine) < 1)) return undefined;
  const toward = unit(flat);
  const across = cross(axis, toward);
  const cosine = Math.sqrt(1 - sine * sine);
  const pull = plus([cosine * toward[0], cosine * toward[1], cosine * toward[2]], across, sine);
  const free = distance * cosine;
  return [-free * pull[0] - height * axis[0], -free * pull[1] - height * axis[1], -free * pull[2] - height * axis[2]];
}

/** Angle between two directions, 0 … π. */
export function angleBetween(a: Vector, b: Vector): number {
  const c = cross(a, b);
  return Math.atan2(Math.hypot(c[0], c[1], c[2]), dot(a, b));
}

const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
