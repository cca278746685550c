/**
 * The planar four-bar that a rod makes with its two arms, where it makes one: its class, how far its driving arm can go, and the
 * other way in which the same lengths can be put together.
 */
import { classify, inputLimits, type Classification, type FourBar } from '../kinematics/fourBar/index.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { turnedAt } from '../kinematics/poseGeometry.ts';
import { cross, dot, minus, plus, vectorAt, type Vector } from '../numeric/vector.ts';
import type { Travel } from '../travel/travel.ts';

/** Sine of the angle between two axes that count as parallel. */
const PLANAR = 1e-9;

/**
 * Link lengths in metres as seen along the axes: a input arm, b rod, c output arm, d between the pivots. Pins at different heights
 * leave the motion planar: the rod then counts as long as it is seen. Undefined where the axes are not parallel.
 */
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
  if (Math.hypot(...other) > PLANAR) return undefined;
  const arm = (pin: number): number => {
    const perp: Vector = vectorAt(p, pin + 3);
    return Math.hypot(...perp);
  };
  return { a: arm(joint.driverPin), b: Math.sqrt(p[joint.length]! ** 2 - step * step), c: arm(joint.drivenPin), d: flat };
}

export interface FourBarReport {
  readonly links: FourBar;
  readonly classification: Classification;
  /** How far the driving arm can turn from drawn in its opening and closing direction, rad; undefined where nothing stops it. */
  readonly ahead: number | undefined;
  readonly behind: number | undefined;
  /** Rotation of the driven lever from drawn to the other circuit with the foot off, rad within ±π. */
  readonly otherCircuit: number;
}

/** Undefined for a spatial linkage. */
export function reportFourBar(travel: Travel, joint: RodJoint): FourBarReport | undefined {
  const links = fourBarOf(travel, joint);
  if (links === undefined) return undefined;
  const { mechanism, build } = travel;
  const p = build.parameters;
  const driver = mechanism.levers[joint.driver]!;
  const driven = mechanism.levers[joint.driven]!;
  const ground = minus(vectorAt(p, driven.pivot), vectorAt(p, driver.pivot));
  const axis = vectorAt(p, driver.axis);
  const drawn = angleAbout(axis, ground, vectorAt(p, joint.driverPin + 3));
  const sense = mechanism.senses[joint.driver]!;
  const toggles = inputLimits(links)?.toggles ?? [];
  const nearest = (way: number): number | undefined => {
    const left = toggles.map(({ angle }) => wholeTurn(way * (angle - drawn)));
    return left.length === 0 ? undefined : Math.min(...left);
  };
  // The two circuits mirror each other about the line from the driven pivot to the driving pin.
  const pose = travel.poseAt(0);
  const toPin = minus(turnedAt(build, pose, joint.driver, joint.driverPin), vectorAt(p, joint.drivenPin));
  const toLine = angleAbout(vectorAt(p, driven.axis), vectorAt(p, joint.drivenPin + 3), toPin);
  const otherCircuit = 2 * toLine - pose.rotation[joint.driven]!;
  return {
    links,
    classification: classify(links),
    ahead: nearest(sense),
    behind: nearest(-sense),
    otherCircuit: otherCircuit - TURN * Math.round(otherCircuit / TURN),
  };
}

/** From one direction to another about an axis, within ±π. */
function angleAbout(axis: Vector, from: Vector, to: Vector): number {
  const flat = plus(to, axis, -dot(axis, to));
  return Math.atan2(dot(cross(from, flat), axis), dot(from, flat));
}

const TURN = 2 * Math.PI;

function wholeTurn(angle: number): number {
  return angle - TURN * Math.floor(angle / TURN);
}
