/**
 * Places, directions and angles read off a pose, in metres and radians.
 */
import { cross, dot, minus, plus, size, sizeOf, unit, vectorAt, type Vector } from '../numeric/vector.ts';
import type { Build } from './build.ts';
import type { CableEndModel, CableJoint, RodJoint } from './model.ts';
import type { Pose } from './pose.ts';
import { drumAt, type DrumPoint } from './joints/drum.ts';

/** A point or direction fixed to a lever (nine parameters), as it stands. */
export function turnedAt(build: Build, pose: Pose, lever: number, turning: number): Vector {
  const p = build.parameters;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  return [
    p[turning]! + c * p[turning + 3]! + s * p[turning + 6]!,
    p[turning + 1]! + c * p[turning + 4]! + s * p[turning + 7]!,
    p[turning + 2]! + c * p[turning + 5]! + s * p[turning + 8]!,
  ];
}

/**
 * asin(|u·(r × e)| / |r|): how squarely a pull along the unit vector `e` turns a lever about its axis u by an arm r.
 * Computed from all three parts of e, so that it is exact near 90° too.
 */
export function armAngle(build: Build, pose: Pose, lever: number, pin: number, e: Vector): number {
  const p = build.parameters;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  // Written out: this is read at every sample of every joint, and vectors would be made for nothing.
  const px = p[pin + 3]!;
  const py = p[pin + 4]!;
  const pz = p[pin + 5]!;
  const qx = p[pin + 6]!;
  const qy = p[pin + 7]!;
  const qz = p[pin + 8]!;
  const arm = sizeOf(c * px + s * qx, c * py + s * qy, c * pz + s * qz);
  const tx = c * qx - s * px;
  const ty = c * qy - s * py;
  const tz = c * qz - s * pz;
  const along = e[0] * tx + e[1] * ty + e[2] * tz;
  const tangent = sizeOf(tx, ty, tz);
  const x = tx / tangent;
  const y = ty / tangent;
  const z = tz / tangent;
  return Math.atan2(Math.abs(along) / arm, sizeOf(e[1] * z - e[2] * y, e[2] * x - e[0] * z, e[0] * y - e[1] * x));
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
  const distance = size(flat);
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
  return Math.atan2(size(cross(a, b)), dot(a, b));
}

const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
