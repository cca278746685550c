/** The line on which each joint works as the linkage stands, with its friction, and the ends of each cable. */
import type { Build } from '../../kinematics/build.ts';
import type { CableJoint, Joint, RodJoint, SlotJoint } from '../../kinematics/model.ts';
import { innerAt } from '../../kinematics/poseGeometry.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { passedArm, pullArm } from '../cableArms.ts';
import type { CableArms } from '../closing.ts';
import type { Motion } from '../motion.ts';
import { capstanRatio } from './capstan.ts';
import { frictionRadius } from './circle.ts';
import { createGrip, createLine, gripPin, gripPlace, type JointLine } from './line.ts';
import { fillRodLine, type Turning } from './rodLine.ts';
import { fillSlotLine } from './slotLine.ts';

/** A cable as it stands. */
export interface CableLine {
  /** Moment about the driven lever's axis for a tension of one, m; and about the driving lever's, which the tension draws back. */
  pulls: number;
  draws: number;
  /** Way of the inner's pull on the driven and the driving lever, of length 1. */
  readonly driven: { x: number; y: number; z: number };
  readonly driving: { x: number; y: number; z: number };
  /** Tension at the pedal's end over that at the engine's while the cable is pulled. */
  ratio: number;
}

export interface Lines {
  /** By joint index; what stands at a cable's means nothing. */
  readonly joints: readonly JointLine[];
  readonly cables: readonly CableLine[];
}

export function createLines({ mechanism }: Build): Lines {
  const way = (): CableLine['driven'] => ({ x: 0, y: 0, z: 0 });
  return {
    joints: mechanism.joints.map(createLine),
    cables: mechanism.cables.map(() => ({ pulls: 0, draws: 0, driven: way(), driving: way(), ratio: 1 })),
  };
}

/** @param isLoaded by lever, whether it matters where forces on it point: they load a bearing @param arms those of the pose, where they are known */
export function fillLines(build: Build, pose: Pose, motion: Motion, isLoaded: readonly boolean[], lines: Lines, arms?: CableArms): void {
  for (const joint of build.mechanism.joints) {
    const line = lines.joints[joint.index]!;
    switch (joint.kind) {
      case 'rod':
        fillRod(build, pose, motion, joint, line);
        break;
      case 'slot':
        fillSlot(build, pose, motion, joint, line);
        break;
      case 'coupling':
        // Its force is the torque on the driven lever.
        line.arm = 1;
        line.back = -build.parameters[joint.ratio]!;
        break;
      case 'cable':
        fillCable(build, pose, joint, isLoaded, lines.cables[joint.cable]!, arms);
    }
  }
}

/** Turning of a lever for a radian of the body from which the joint comes. */
function fillTurning({ mechanism, parameters: p }: Build, motion: Motion, joint: Joint, lever: number, into: Turning): void {
  const body = motion.bodyOf[lever]!;
  const behind = motion.bodies[body]?.driver === joint ? motion.links[body]!.gain : 1;
  const { axis } = mechanism.levers[lever]!;
  into.rate = mechanism.senses[lever]! * motion.unit[lever]! * behind;
  into.x = p[axis]!;
  into.y = p[axis + 1]!;
  into.z = p[axis + 2]!;
}

function fillRod(build: Build, pose: Pose, motion: Motion, joint: RodJoint, line: JointLine): void {
  const { driver, driven } = joint;
  const { coefficient, pin } = build.mechanism.friction.joints[joint.index]!;
  const p = build.parameters;
  gripPin(p, joint.driverPin, pose.cosine[driver]!, pose.sine[driver]!, start);
  gripPin(p, joint.drivenPin, pose.cosine[driven]!, pose.sine[driven]!, end);
  fillTurning(build, motion, joint, driver, first);
  fillTurning(build, motion, joint, driven, second);
  const radius = coefficient === undefined || pin === undefined ? 0 : frictionRadius(p[pin]!, p[coefficient]!);
  fillRodLine(radius, start, end, first, second, line);
}

function fillSlot(build: Build, pose: Pose, motion: Motion, joint: SlotJoint, line: JointLine): void {
  const { pinLever, fork } = joint;
  const p = build.parameters;
  const { axis } = build.mechanism.levers[fork]!;
  gripPin(p, joint.pin, pose.cosine[pinLever]!, pose.sine[pinLever]!, start);
  gripPlace(p, axis, joint.forkPivot, start.x, start.y, start.z, end);
  const c = pose.cosine[fork]!;
  const s = pose.sine[fork]!;
  normal.x = c * p[joint.normal]! - s * p[joint.direction]!;
  normal.y = c * p[joint.normal + 1]! - s * p[joint.direction + 1]!;
  normal.z = c * p[joint.normal + 2]! - s * p[joint.direction + 2]!;
  fillTurning(build, motion, joint, pinLever, first);
  fillTurning(build, motion, joint, fork, second);
  const { coefficient } = build.mechanism.friction.joints[joint.index]!;
  fillSlotLine(coefficient === undefined ? 0 : p[coefficient]!, normal, start, end, first, second, joint.driven === fork, line);
}

function fillCable(build: Build, pose: Pose, joint: CableJoint, isLoaded: readonly boolean[], line: CableLine, arms?: CableArms): void {
  const { coefficient, bend } = build.mechanism.friction.joints[joint.index]!;
  const p = build.parameters;
  line.pulls = arms?.passed[joint.cable] ?? passedArm(build, pose, joint);
  line.draws = joint.driver === undefined ? 0 : -(arms?.pull[joint.cable] ?? pullArm(build, pose, joint));
  line.ratio = coefficient === undefined || bend === undefined ? 1 : capstanRatio(p[coefficient]!, p[bend]!);
  if (isLoaded[joint.driven]) fillWay(build, pose, joint, 'enters', line.driven);
  if (joint.driver !== undefined && isLoaded[joint.driver]) fillWay(build, pose, joint, 'leaves', line.driving);
}

/** From the pin or the drum's rim to the housing end. Nothing where that lies within the drum: the tension then only turns. */
function fillWay(build: Build, pose: Pose, joint: CableJoint, which: 'enters' | 'leaves', into: CableLine['driven']): void {
  const inner = innerAt(build, pose, joint, which);
  const size = inner === undefined ? Infinity : -Math.hypot(inner[0], inner[1], inner[2]);
  into.x = (inner?.[0] ?? 0) / size;
  into.y = (inner?.[1] ?? 0) / size;
  into.z = (inner?.[2] ?? 0) / size;
}

const start = createGrip();
const end = createGrip();
const normal = { x: 0, y: 0, z: 0 };
const first: Turning = { rate: 0, x: 0, y: 0, z: 0 };
const second: Turning = { rate: 0, x: 0, y: 0, z: 0 };
