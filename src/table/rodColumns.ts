/** Columns of a rod: its angles at both arms, the tilt of its ends and their twist. */
import type { Build } from '../kinematics/build.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { column, type Column } from './column.ts';
import { armAngle, fillRodDirection, fillTurned, rodDirection, turnedAt } from '../kinematics/poseGeometry.ts';
import { cross, dot, plus, sizeOf, unit, type Vector } from '../numeric/vector.ts';

export function rodColumns(joint: RodJoint): readonly Column[] {
  const { name, index, driven } = joint;
  const at = { joint: index, lever: driven };
  return [
    column(name, 'transmission', 'angle', 'deg', (build, pose) => rodAngle(build, pose, joint, joint.driven, joint.drivenPin), at),
    column(name, 'drive', 'angle', 'deg', (build, pose) => rodAngle(build, pose, joint, joint.driver, joint.driverPin), at),
    column(name, 'misalignment', 'angle', 'deg', (build, pose) => misalignment(build, pose, joint), at),
    column(name, 'twist', 'angle', 'deg', (build, pose) => twist(build, pose, joint), at),
  ];
}

/** Between the rod and one of the arms that it joins. */
function rodAngle(build: Build, pose: Pose, joint: RodJoint, lever: number, pin: number): number {
  fillRodDirection(build, pose, joint, along);
  return armAngle(build, pose, lever, pin, along);
}

/** Greater of the two ends' tilts: the angle by which the rod leaves the plane square to the bolt. */
function misalignment(build: Build, pose: Pose, joint: RodJoint): number {
  const bolts = build.mechanism.directions.bolts.get(joint.name);
  if (bolts === undefined) return NaN;
  fillRodDirection(build, pose, joint, along);
  return Math.max(tilt(build, pose, joint.driver, bolts.from), tilt(build, pose, joint.driven, bolts.to));
}

/** Of the rod in `along` to a bolt on a lever. */
function tilt(build: Build, pose: Pose, lever: number, at: number): number {
  fillTurned(build, pose, lever, at, bolt);
  const [x, y, z] = [bolt[0]!, bolt[1]!, bolt[2]!];
  const [ex, ey, ez] = [along[0]!, along[1]!, along[2]!];
  return Math.atan2(Math.abs(x * ex + y * ey + z * ez), sizeOf(y * ez - z * ey, z * ex - x * ez, x * ey - y * ex));
}

const along = new Float64Array(3);
const bolt = new Float64Array(3);

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
