/**
 * The planar four-bar that a rod makes with its two arms, where it makes one.
 */
import type { FourBar } from '../kinematics/fourBar/index.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { cross, dot, minus, turnedAt, vectorAt, type Vector } from '../table/geometry.ts';
import type { Travel } from '../travel/travel.ts';

/** Sine of the angle and share of the ground's length by which a linkage may leave its plane and still count as planar. */
const PLANAR = 1e-9;

/** Link lengths in metres: a input arm, b rod, c output arm, d between the pivots. Undefined for a spatial linkage. */
export function fourBarOf(travel: Travel, joint: RodJoint): FourBar | undefined {
  const { build, mechanism } = travel;
  const p = build.parameters;
  const driver = mechanism.levers[joint.driver]!;
  const driven = mechanism.levers[joint.driven]!;
  const axis = vectorAt(p, driver.axis);
  const other = cross(axis, vectorAt(p, driven.axis));
  const between = minus(vectorAt(p, driven.pivot), vectorAt(p, driver.pivot));
  const pose = travel.poseAt(0);
  const height = (lever: number, pin: number, pivot: number): number =>
    dot(axis, minus(turnedAt(build, pose, lever, pin), vectorAt(p, pivot)));
  const step =
    dot(axis, between) + height(joint.driven, joint.drivenPin, driven.pivot) - height(joint.driver, joint.driverPin, driver.pivot);
  const along = dot(axis, between);
  const flat = Math.sqrt(Math.max(0, dot(between, between) - along * along));
  const scale = Math.max(flat, p[joint.length]!);
  if (Math.hypot(...other) > PLANAR || Math.abs(step) > PLANAR * scale) return undefined;
  const arm = (pin: number): number => {
    const perp: Vector = vectorAt(p, pin + 3);
    return Math.hypot(...perp);
  };
  return { a: arm(joint.driverPin), b: p[joint.length]!, c: arm(joint.drivenPin), d: flat };
}
