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

/**
 * Fills `pose` for pedal travel `travel`, a fraction of the whole; does not allocate.
 * @param through index of the last joint to move; levers behind it are left as they stood
 */
export function advance(build: Build, travel: number, pose: Pose, through = build.mechanism.joints.length - 1): void {
  const { mechanism } = build;
  pose.travel = travel;
  const { drive } = mechanism;
  if (drive.kind === 'lever') {
    const full = build.parameters[drive.travel]!;
    const asked = full * travel;
    const { pedalRest, pedalStop } = build.bounds;
    // At the very place where it leaves its rest the pedal moves on.
    const held = asked < pedalRest - STOP_SLOP;
    const opening = asked > pedalStop + STOP_SLOP ? NaN : held ? pedalRest : asked;
    turnRoot(pose, drive.lever, drive.sense * opening, held || opening >= pedalStop ? 0 : drive.sense * full);
  }
  const { joints } = mechanism;
  for (let i = 0; i <= through; i++) moveJoint(build, joints[i]!, pose);
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
