/** Columns of a slot: how far along the fork its pin stands, and its angles at both levers. */
import type { Build } from '../kinematics/build.ts';
import { slotFrame, type SlotFrame } from '../kinematics/joints/slot.ts';
import type { SlotJoint } from '../kinematics/model.ts';
import type { Pose } from '../kinematics/pose.ts';
import { column, type Column } from './column.ts';

export function slotColumns(joint: SlotJoint): readonly Column[] {
  const { name, index, driven } = joint;
  const at = { joint: index, lever: driven };
  const forkDriven = joint.driven === joint.fork;
  const atFork = (build: Build, pose: Pose): number => {
    const { reach, offset } = frameAt(build, pose, joint);
    return Math.atan2(Math.abs(reach), Math.abs(offset));
  };
  /** sin = |n·t| / |perp|; f·t and what leaves the fork's plane make up the rest of t. */
  const atPin = (build: Build, pose: Pose): number => {
    const { normalTangent } = frameAt(build, pose, joint);
    const p = build.parameters;
    const arm = Math.hypot(p[joint.pin + 3]!, p[joint.pin + 4]!, p[joint.pin + 5]!);
    return Math.asin(Math.min(1, Math.abs(normalTangent) / arm));
  };
  return [
    column(name, 'reach', 'length', 'mm', (build, pose) => frameAt(build, pose, joint).reach, at),
    column(name, 'transmission', 'angle', 'deg', forkDriven ? atFork : atPin, at),
    column(name, 'drive', 'angle', 'deg', forkDriven ? atPin : atFork, at),
  ];
}

function frameAt(build: Build, pose: Pose, joint: SlotJoint): SlotFrame {
  slotFrame(joint, build.parameters, pose, frame);
  return frame;
}

const frame: SlotFrame = { reach: 0, offset: 0, normalTangent: 0, directionTangent: 0, normalInward: 0 };
