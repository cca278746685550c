/**
 * A pin in a fork: the pin, seen along the fork's axis, stays on the fork's centreline, `offset` from its pivot.
 *
 * With f the fork's direction, n = u × f to its left, D = P − fork pivot: n·D = offset. Both ways of driving are
 * A cos φ + B sin φ = C. With t₁ = dP/dφ₁, n₁ = d²P/dφ₁², φ the fork's rotation and reach = f·D:
 *     reach φ′ = n·t₁ φ₁′
 *     reach φ″ = n·t₁ φ₁″ + n·n₁ φ₁′² − 2 f·t₁ φ₁′φ′ − offset φ′²
 * Derivation: differentiate n·D = offset, with n′ = −f φ′ and f′ = n φ′.
 */
import type { Bounds } from '../build.ts';
import type { SlotJoint } from '../model.ts';
import type { Pose } from '../pose.ts';
import { continuedRotation, turnTo } from './turn.ts';

export function moveSlot(joint: SlotJoint, p: Float64Array, bounds: Bounds, pose: Pose): void {
  let offset = p[joint.offset]!;
  if (joint.play !== undefined) {
    const edge = playEdge(joint, p, bounds, pose);
    if (edge === 0) {
      rest(joint, bounds, pose);
      return;
    }
    offset += (edge * p[joint.play]!) / 2;
  }
  const { driver, driven } = joint;
  const driverRate = pose.rate[driver]!;
  const forkDriven = driven === joint.fork;
  if (forkDriven) turnFork(joint, p, pose, offset);
  else turnPin(joint, p, pose, offset);
  pose.rotation[driven] = continuedRotation(pose, driven, driver, p, joint.winding);

  slotFrame(joint, p, pose, frame);
  const gain = forkDriven ? frame.normalTangent / frame.reach : frame.reach / frame.normalTangent;
  const rate = driverRate === 0 ? 0 : gain * driverRate;
  pose.rate[driven] = rate;
  const pinRate = forkDriven ? driverRate : rate;
  const forkRate = forkDriven ? rate : driverRate;
  const curvature = pose.curvature[driver]!;
  if (driverRate === 0 && curvature === 0) {
    pose.curvature[driven] = 0;
    return;
  }
  const quadratic =
    frame.normalInward * pinRate * pinRate - 2 * frame.directionTangent * pinRate * forkRate - frame.offset * forkRate * forkRate;
  pose.curvature[driven] = forkDriven
    ? (frame.normalTangent * curvature + quadratic) / frame.reach
    : (frame.reach * curvature - quadratic) / frame.normalTangent;
}

/** A fork and its pin as they stand: projections on the fork's turned direction f and normal n. */
export interface SlotFrame {
  /** f·D, m; signed as drawn. */
  reach: number;
  /** n·D, m. */
  offset: number;
  /** n·t and f·t, with t the pin's derivative by its lever's rotation, m. */
  normalTangent: number;
  directionTangent: number;
  /** n·d²P/dφ², m. */
  normalInward: number;
}

export function slotFrame(joint: SlotJoint, p: Float64Array, pose: Pose, into: SlotFrame): void {
  const cf = pose.cosine[joint.fork]!;
  const sf = pose.sine[joint.fork]!;
  const cp = pose.cosine[joint.pinLever]!;
  const sp = pose.sine[joint.pinLever]!;
  let reach = 0;
  let offset = 0;
  let normalTangent = 0;
  let directionTangent = 0;
  let normalInward = 0;
  for (let axis = 0; axis < 3; axis++) {
    const f0 = p[joint.direction + axis]!;
    const n0 = p[joint.normal + axis]!;
    const f = cf * f0 + sf * n0;
    const n = cf * n0 - sf * f0;
    const perp = p[joint.pin + 3 + axis]!;
    const cross = p[joint.pin + 6 + axis]!;
    const arm = cp * perp + sp * cross;
    const tangent = cp * cross - sp * perp;
    const d = p[joint.pin + axis]! + arm - p[joint.forkPivot + axis]!;
    reach += f * d;
    offset += n * d;
    normalTangent += n * tangent;
    directionTangent += f * tangent;
    normalInward -= n * arm;
  }
  into.reach = reach;
  into.offset = offset;
  into.normalTangent = normalTangent;
  into.directionTangent = directionTangent;
  into.normalInward = normalInward;
}

function turnFork(joint: SlotJoint, p: Float64Array, pose: Pose, offset: number): void {
  const c = pose.cosine[joint.pinLever]!;
  const s = pose.sine[joint.pinLever]!;
  let a = 0;
  let b = 0;
  for (let axis = 0; axis < 3; axis++) {
    const pin = joint.pin + axis;
    const d = p[pin]! + c * p[pin + 3]! + s * p[pin + 6]! - p[joint.forkPivot + axis]!;
    a += p[joint.normal + axis]! * d;
    b -= p[joint.direction + axis]! * d;
  }
  turnTo(pose, joint.fork, a, b, offset, p[joint.side]!);
}

function turnPin(joint: SlotJoint, p: Float64Array, pose: Pose, offset: number): void {
  const c = pose.cosine[joint.fork]!;
  const s = pose.sine[joint.fork]!;
  let a = 0;
  let b = 0;
  let constant = offset;
  for (let axis = 0; axis < 3; axis++) {
    const n = c * p[joint.normal + axis]! - s * p[joint.direction + axis]!;
    const pin = joint.pin + axis;
    a += n * p[pin + 3]!;
    b += n * p[pin + 6]!;
    constant -= n * (p[pin]! - p[joint.forkPivot + axis]!);
  }
  turnTo(pose, joint.pinLever, a, b, constant, p[joint.side]!);
}

/** Edge of the play that the pin presses with the driven lever at rest: +1 left, −1 right, 0 neither. */
function playEdge(joint: SlotJoint, p: Float64Array, bounds: Bounds, pose: Pose): number {
  rest(joint, bounds, pose);
  slotFrame(joint, p, pose, frame);
  const half = joint.play === undefined ? 0 : p[joint.play]! / 2;
  const from = frame.offset - p[joint.offset]!;
  // How n·D changes as the driver goes on, the driven lever held.
  const growth = (joint.driver === joint.pinLever ? frame.normalTangent : -frame.reach) * pose.rate[joint.driver]!;
  const slop = TAUT * Math.abs(frame.reach);
  if (from > half + slop || (from > half - slop && growth > 0)) return 1;
  if (from < -half - slop || (from < -half + slop && growth < 0)) return -1;
  return Number.isNaN(from) ? 1 : 0;
}

/** How near to the edge of its play a pin must be to count as pressing it, relative to its reach. */
const TAUT = 1e-12;

function rest(joint: SlotJoint, bounds: Bounds, pose: Pose): void {
  const rotation = bounds.restRotation[joint.driven]!;
  pose.rotation[joint.driven] = rotation;
  pose.cosine[joint.driven] = Math.cos(rotation);
  pose.sine[joint.driven] = Math.sin(rotation);
  pose.rate[joint.driven] = 0;
  pose.curvature[joint.driven] = 0;
}

const frame: SlotFrame = { reach: 0, offset: 0, normalTangent: 0, directionTangent: 0, normalInward: 0 };
