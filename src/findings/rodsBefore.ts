/** Rods on the way from the pedal to a lever. */
import { createPose } from '../kinematics/pose.ts';
import { turnedAt } from '../kinematics/poseGeometry.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { minus } from '../numeric/vector.ts';
import type { Study } from './study.ts';

/** Those within its group, nearest to the lever first. */
export function rodsBefore({ travel: { mechanism } }: Study, lever: number): readonly RodJoint[] {
  const { joints, levers } = mechanism;
  const rods: RodJoint[] = [];
  for (let at = levers[lever]!.driver; at !== undefined;) {
    const joint = joints[at]!;
    if (joint.kind === 'cable') break;
    if (joint.kind === 'rod') rods.push(joint);
    at = levers[joint.driver]!.driver;
  }
  return rods;
}

export function isOffDrawn(study: Study, rod: RodJoint): boolean {
  return Math.abs(drawnLength(study, rod) - study.travel.build.parameters[rod.length]!) > AS_DRAWN;
}

/** How far apart its pins are drawn, m. */
export function drawnLength({ travel: { build, mechanism } }: Study, rod: RodJoint): number {
  const drawn = createPose(mechanism);
  const from = turnedAt(build, drawn, rod.driver, rod.driverPin);
  const to = turnedAt(build, drawn, rod.driven, rod.drivenPin);
  return Math.hypot(...minus(to, from));
}

/** m; a length written rounded to a micrometre is as drawn. */
const AS_DRAWN = 1e-6;
