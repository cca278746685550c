/**
 * Solves one station: every lever's rotation with its first and second derivative along the pedal.
 *
 * The load path is a tree in order, so each lever follows from the one before it in closed form; there is no starting
 * guess and no history, so any station can be asked for first.
 */
import type { Build } from './build.ts';
import { moveCable } from './joints/cable.ts';
import { moveCoupling } from './joints/coupling.ts';
import { moveRod } from './joints/rod.ts';
import { moveSlot } from './joints/slot.ts';
import type { Joint } from './model.ts';
import type { Pose } from './pose.ts';

/** Fills `pose` for pedal travel `travel`, a fraction of the whole; does not allocate. */
export function advance(build: Build, travel: number, pose: Pose): void {
  turnPedal(build, travel, pose);
  for (const joint of build.mechanism.joints) moveJoint(build, joint, pose);
}

/**
 * The same for the joints alone that lead from the pedal to one lever; all others are left as they stood.
 * @param joint index of the joint that drives the lever; undefined for the pedal, and for a lever that nothing drives
 */
export function advanceTo(build: Build, travel: number, pose: Pose, joint: number | undefined): void {
  turnPedal(build, travel, pose);
  if (joint !== undefined) moveThrough(build, joint, pose);
}

function moveThrough(build: Build, index: number, pose: Pose): void {
  const { joints, levers } = build.mechanism;
  const joint = joints[index]!;
  const before = joint.driver === undefined ? undefined : levers[joint.driver]!.driver;
  if (before !== undefined) moveThrough(build, before, pose);
  moveJoint(build, joint, pose);
}

/** The pedal's own lever alone, where it has one. */
export function turnPedal(build: Build, travel: number, pose: Pose): void {
  pose.travel = travel;
  const { drive } = build.mechanism;
  if (drive.kind === 'lever') {
    const full = build.parameters[drive.travel]!;
    const asked = full * travel;
    const { pedalRest, pedalStop } = build.bounds;
    // At the very place where it leaves its rest the pedal moves on.
    const held = asked < pedalRest - STOP_SLOP;
    const opening = asked > pedalStop + STOP_SLOP ? NaN : held ? pedalRest : asked;
    turnRoot(pose, drive.lever, drive.sense * opening, held || opening >= pedalStop ? 0 : drive.sense * full);
  }
}

/** Moves the driven lever of one joint, whose driver must stand already. */
export function moveJoint(build: Build, joint: Joint, pose: Pose): void {
  const { mechanism, parameters, bounds } = build;
  switch (joint.kind) {
    case 'rod':
      moveRod(joint, parameters, bounds, pose);
      break;
    case 'cable':
      moveCable(mechanism, joint, parameters, bounds, pose);
      break;
    case 'slot':
      moveSlot(joint, parameters, bounds, pose);
      break;
    case 'coupling':
      moveCoupling(mechanism, joint, parameters, bounds, pose);
      break;
  }
}

/** Puts a lever that nothing in its group drives. */
export function turnRoot(pose: Pose, lever: number, rotation: number, rate: number): void {
  pose.rotation[lever] = rotation;
  pose.cosine[lever] = Math.cos(rotation);
  pose.sine[lever] = Math.sin(rotation);
  pose.rate[lever] = rate;
  pose.curvature[lever] = 0;
}

/** rad; a pedal exactly on its stop may be past it by rounding. */
const STOP_SLOP = 1e-13;
