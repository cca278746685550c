/** Fills the poses of a travel, those levers that stand as in a travel before taken over from there. */
import { advance, moveJoint, turnPedal } from '../kinematics/advance.ts';
import type { Build } from '../kinematics/build.ts';
import type { Joint } from '../kinematics/model.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Known } from './memory.ts';
import { stationFinder } from './stations.ts';

/** Fills a pose for a place of the pedal. */
export type FillPose = (travel: number, pose: Pose) => void;

/** Takes over what the travel before still knows. */
export function poseFiller(build: Build, now: Known): FillPose {
  const { before } = now;
  const joints = before === undefined ? [] : build.mechanism.joints.map((joint) => takenOver(build, joint, now, before));
  if (before?.samples === undefined || !joints.some((taken) => taken !== undefined)) {
    return (travel, pose) => {
      advance(build, travel, pose);
    };
  }
  return takingOver(build, now, joints, stationFinder(before.samples));
}

function takingOver(build: Build, now: Known, joints: readonly (Taken | undefined)[], numberOf: (travel: number) => number): FillPose {
  return (travel, pose) => {
    const number = numberOf(travel);
    // The travel before may have been given up meanwhile.
    const from = number < 0 ? undefined : now.before?.poses[number];
    if (from === undefined) {
      advance(build, travel, pose);
      return;
    }
    turnPedal(build, travel, pose);
    for (let i = 0; i < joints.length; i++) {
      const taken = joints[i];
      const joint = build.mechanism.joints[i]!;
      if (taken === undefined) moveJoint(build, joint, pose);
      else copy(from, taken, pose, joint);
    }
  };
}

/** Where a joint's driven lever and its cable stood in the poses before. */
interface Taken {
  readonly lever: number;
  readonly cable: number | undefined;
}

function takenOver(build: Build, joint: Joint, now: Known, before: Known): Taken | undefined {
  const cause = now.levers[joint.driven];
  const lever = before.leverIndex.get(build.mechanism.levers[joint.driven]!.name);
  if (cause === undefined || lever === undefined || before.levers[lever] !== cause) return undefined;
  if (joint.kind !== 'cable') return { lever, cable: undefined };
  const cable = before.cableIndex.get(joint.name);
  // A cable by another name may have been in its place.
  return cable === undefined ? undefined : { lever, cable };
}

function copy(from: Pose, { lever, cable }: Taken, into: Pose, joint: Joint): void {
  const { driven } = joint;
  into.rotation[driven] = from.rotation[lever]!;
  into.cosine[driven] = from.cosine[lever]!;
  into.sine[driven] = from.sine[lever]!;
  into.rate[driven] = from.rate[lever]!;
  into.curvature[driven] = from.curvature[lever]!;
  if (joint.kind !== 'cable' || cable === undefined) return;
  const at = joint.cable;
  into.pull[at] = from.pull[cable]!;
  into.pullRate[at] = from.pullRate[cable]!;
  into.pullCurvature[at] = from.pullCurvature[cable]!;
  into.passed[at] = from.passed[cable]!;
  into.passedRate[at] = from.passedRate[cable]!;
  into.passedCurvature[at] = from.passedCurvature[cable]!;
  into.stretch[at] = from.stretch[cable]!;
  into.cableState[at] = from.cableState[cable]!;
}
