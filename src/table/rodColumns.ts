/** Columns of a rod: its angles at both arms, the tilt of its ends and their twist. */
import type { Build } from '../kinematics/build.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { column, type Column } from './column.ts';
import { armAngle, rodDirection, turnedAt } from '../kinematics/poseGeometry.ts';
import { cross, dot, plus, size, unit, type Vector } from '../numeric/vector.ts';

export function rodColumns(joint: RodJoint): readonly Column[] {
  const { name, index, driven } = joint;
  const at = { joint: index, lever: driven };
  return [
    column(
      name,
      'transmission',
      'angle',
      'deg',
      (build, pose) => armAngle(build, pose, joint.driven, joint.drivenPin, rodDirection(build, pose, joint)),
      at,
    ),
    column(
      name,
      'drive',
      'angle',
      'deg',
      (build, pose) => armAngle(build, pose, joint.driver, joint.driverPin, rodDirection(build, pose, joint)),
      at,
    ),
    column(name, 'misalignment', 'angle', 'deg', (build, pose) => misalignment(build, pose, joint), at),
    column(name, 'twist', 'angle', 'deg', (build, pose) => twist(build, pose, joint), at),
  ];
}

/** Greater of the two ends' tilts: the angle by which the rod leaves the plane square to the bolt. */
function misalignment(build: Build, pose: Pose, joint: RodJoint): number {
  const bolts = boltsAt(build, pose, joint);
  if (bolts === undefined) return NaN;
  const e = rodDirection(build, pose, joint);
  const tilt = (bolt: Vector): number => {
    return Math.atan2(Math.abs(dot(bolt, e)), size(cross(bolt, e)));
  };
  return Math.max(tilt(bolts.from), tilt(bolts.to));
}

/** Change since drawn of the angle between the two bolts about the rod, within ±90°: a bolt has no head or tail. */
function twist(build: Build, pose: Pose, joint: RodJoint): number {
  return withinQuarter(boltAngle(build, pose, joint) - boltAngle(build, createPose(build.mechanism), joint));
}

function boltAngle(build: Build, pose: Pose, joint: RodJoint): number {
  const bolts = boltsAt(build, pose, joint);
  if (bolts === undefined) return NaN;
  const e = rodDirection(build, pose, joint);
  const square = (bolt: Vector): Vector => unit(plus(bolt, e, -dot(bolt, e)));
  const from = square(bolts.from);
  const to = square(bolts.to);
  return Math.atan2(dot(cross(from, to), e), dot(from, to));
}

function boltsAt(build: Build, pose: Pose, joint: RodJoint): { readonly from: Vector; readonly to: Vector } | undefined {
  const bolts = build.mechanism.directions.bolts.get(joint.name);
  if (bolts === undefined) return undefined;
  return { from: turnedAt(build, pose, joint.driver, bolts.from), to: turnedAt(build, pose, joint.driven, bolts.to) };
}

function withinQuarter(angle: number): number {
  return angle - Math.PI * Math.round(angle / Math.PI);
}
