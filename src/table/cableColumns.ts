/**
 * Columns of a cable: its pull and stretch, its angles at both pins, and its lead at both housing ends.
 *
 * Lead is the angle of the free inner to the way its housing end points. Where the file does not say how the housing points, it
 * is taken to point midway of the directions that the inner sweeps, as a housing end set by eye would.
 */
import type { Build } from '../kinematics/build.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { advanceTo } from '../kinematics/advance.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { later } from '../travel/once.ts';
import { merge } from '../travel/places.ts';
import type { Travel } from '../travel/travel.ts';
import { column, type Column } from './column.ts';
import { angleBetween, armAngle, innerAt } from '../kinematics/poseGeometry.ts';
import { anySquare, cross, dot, plus, unit, vectorAt, type Vector } from '../numeric/vector.ts';

export function cableColumns(travel: Travel, joint: CableJoint): readonly Column[] {
  const { name, index, driven, cable } = joint;
  const at = { joint: index, lever: driven };
  // Found when first asked for: it takes the whole travel.
  const leaves = later(() => housingDirection(travel, joint, 'leaves'));
  const enters = later(() => housingDirection(travel, joint, 'enters'));
  const leadAt = (build: Build, pose: Pose, which: 'leaves' | 'enters', housing: Vector | undefined): number => {
    const inner = innerAt(build, pose, joint, which);
    return inner === undefined || housing === undefined ? NaN : angleBetween(inner, housing);
  };
  return [
    column(name, 'pull', 'length', 'mm', (_, pose) => pose.pull[cable]! + 0, at),
    column(name, 'stretch', 'length', 'mm', (_, pose) => (Number.isNaN(pose.passed[cable]!) ? NaN : pose.stretch[cable]!), at),
    column(name, 'transmission', 'angle', 'deg', (build, pose) => endAngle(build, pose, joint, 'enters'), at),
    column(name, 'drive', 'angle', 'deg', (build, pose) => endAngle(build, pose, joint, 'leaves'), at),
    column(
      name,
      'lead',
      'angle',
      'deg',
      (build, pose) => {
        const atLeaves = leadAt(build, pose, 'leaves', leaves());
        const atEnters = leadAt(build, pose, 'enters', enters());
        if (joint.driver === undefined) return atEnters;
        return Math.max(atLeaves, atEnters);
      },
      { ...at, own: () => [...(leaves() ?? [NaN]), ...(enters() ?? [NaN])] },
    ),
  ];
}

/** Angle between inner and arm at a pin; a drum is always pulled square. NaN at an end that the file does not have. */
function endAngle(build: Build, pose: Pose, joint: CableJoint, which: 'leaves' | 'enters'): number {
  const end = which === 'leaves' ? joint.driverEnd : joint.drivenEnd;
  const lever = which === 'leaves' ? joint.driver : joint.driven;
  if (end === undefined || lever === undefined) return NaN;
  if (end.kind === 'drum') return Number.isNaN(pose.rotation[lever]!) ? NaN : Math.PI / 2;
  const inner = innerAt(build, pose, joint, which);
  return inner === undefined ? NaN : armAngle(build, pose, lever, end.pin, unit(inner));
}

/** The way a housing end points; undefined where the cable has no such end or its inner no direction. */
function housingDirection(travel: Travel, joint: CableJoint, which: 'leaves' | 'enters'): Vector | undefined {
  const { build, mechanism, places } = travel;
  const given = mechanism.directions.housings.get(joint.name)?.[which];
  if (given !== undefined) return vectorAt(build.parameters, given);
  // Of its own: it may be asked for while a pose of the travel is being read.
  const pose = createPose(mechanism);
  const inner = (at: number): Vector | undefined => {
    advanceTo(build, at, pose, joint.index);
    const found = innerAt(build, pose, joint, which);
    return found === undefined || found.some(Number.isNaN) ? undefined : unit(found);
  };
  const first = inner(0);
  if (first === undefined) return undefined;
  // Two directions square to the first one, one of them in the plane that the inner sweeps where it is planar.
  const far = inner(1) ?? first;
  const swept = cross(first, far);
  const across = Math.hypot(...swept) > STRAIGHT ? unit(cross(swept, first)) : anySquare(first);
  const other = cross(first, across);
  let [least, most, low, high] = [0, 0, 0, 0];
  for (const at of merge(places.all, SWEEP)) {
    const direction = inner(at);
    if (direction === undefined) continue;
    const along = dot(direction, first);
    const turn = Math.atan2(dot(direction, across), along);
    const tilt = Math.atan2(dot(direction, other), along);
    [least, most] = [Math.min(least, turn), Math.max(most, turn)];
    [low, high] = [Math.min(low, tilt), Math.max(high, tilt)];
  }
  return unit(plus(plus(first, across, Math.tan((least + most) / 2)), other, Math.tan((low + high) / 2)));
}

/** Stations at which the sweep is followed besides the turning places. */
const SWEEP: readonly number[] = Array.from({ length: 65 }, (_, i) => i / 64);
/** rad; an inner that sweeps less has no plane of its own. */
const STRAIGHT = 1e-12;
