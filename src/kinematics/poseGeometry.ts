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
  fillTurned(build, pose, lever, turning, turned);
  return [turned[0]!, turned[1]!, turned[2]!];
}

/** The same into three figures. */
export function fillTurned({ parameters: p }: Build, pose: Pose, lever: number, turning: number, into: Float64Array): void {
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  into[0] = p[turning]! + c * p[turning + 3]! + s * p[turning + 6]!;
  into[1] = p[turning + 1]! + c * p[turning + 4]! + s * p[turning + 7]!;
  into[2] = p[turning + 2]! + c * p[turning + 5]! + s * p[turning + 8]!;
}

const turned = new Float64Array(3);

/**
 * asin(|u·(r × e)| / |r|): how squarely a pull along the unit vector `e` turns a lever about its axis u by an arm r.
 * Computed from all three parts of e, so that it is exact near 90° too.
 */
export function armAngle(build: Build, pose: Pose, lever: number, pin: number, e: Direction): number {
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
  const ex = e[0]!;
  const ey = e[1]!;
  const ez = e[2]!;
  const along = ex * tx + ey * ty + ez * tz;
  const tangent = sizeOf(tx, ty, tz);
  const x = tx / tangent;
  const y = ty / tangent;
  const z = tz / tangent;
  return Math.atan2(Math.abs(along) / arm, sizeOf(ey * z - ez * y, ez * x - ex * z, ex * y - ey * x));
}

/** Three figures of a direction, filled again and again: vectors would be made for nothing. */
export type Direction = ArrayLike<number>;

/** From the driving pin to the driven one, of length 1. */
export function rodDirection(build: Build, pose: Pose, joint: RodJoint): Vector {
  fillRodDirection(build, pose, joint, between);
  return [between[0]!, between[1]!, between[2]!];
}

/** The same into three figures. */
export function fillRodDirection(build: Build, pose: Pose, { driver, driverPin, driven, drivenPin }: RodJoint, into: Float64Array): void {
  fillTurned(build, pose, driven, drivenPin, into);
  fillTurned(build, pose, driver, driverPin, start);
  const x = into[0]! - start[0]!;
  const y = into[1]! - start[1]!;
  const z = into[2]! - start[2]!;
  const length = sizeOf(x, y, z);
  into[0] = x / length;
  into[1] = y / length;
  into[2] = z / length;
}

const between = new Float64Array(3);
const start = new Float64Array(3);

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
