/**
 * What bodies can meet: stops, cables that come tight, free play that is used up. Each is a gap g ≥ 0, and presses only where it is shut.
 *
 *     stop     opening − closed, open − opening, rad
 *     cable    slack + passed(driven) − pull(driving), m
 *     rod      L − |e| and |e| − (L − lost), m
 *     slot     play/2 ∓ (n·D − offset), m
 *     coupling lag ∓ ((φ₁ − rest₁) − (φ₂ − rest₂)/ratio), rad; one way: the driven lever is at least as far as it is pushed
 * with ġ and g̈ by the rotation ω and α of the levers. Derivation: differentiate, with Ṗ = t ω and P̈ = t α − arm ω².
 */
import type { Build } from '../../kinematics/build.ts';
import { drumAt, type DrumPoint } from '../../kinematics/joints/drum.ts';
import type { CableEndModel, CableJoint, CouplingJoint, RodJoint, SlotJoint } from '../../kinematics/model.ts';
import type { Pose } from '../../kinematics/pose.ts';

export type Gap =
  | { readonly kind: 'stop'; readonly lever: number; readonly which: 'closed' | 'open' }
  /** The pedal that is only a cable, at its drawn place. */
  | { readonly kind: 'pedal-stop' }
  | { readonly kind: 'cable'; readonly joint: CableJoint }
  /** One end of a seized cable, held as far as it had come: `taken` is what it had pulled or passed, m. */
  | { readonly kind: 'seized'; readonly joint: CableJoint; readonly end: 'driving' | 'driven'; readonly taken: number }
  /** `side`: the sign with which the joint's force works along its line (`friction/line.ts`) when this is shut. */
  | { readonly kind: 'play'; readonly joint: RodJoint | SlotJoint | CouplingJoint; readonly side: 1 | -1 };

/** How the levers move. */
export interface Moving {
  readonly build: Build;
  /** Rotations. */
  readonly pose: Pose;
  /** By lever, rad/s and rad/s². */
  readonly speed: Float64Array;
  readonly acceleration: Float64Array;
  /** Of the pedal that is only a cable, m, m/s, m/s². */
  readonly pedal: { q: number; v: number; a: number };
}

/** g, ġ and g̈, in m or rad. */
export interface GapState {
  g: number;
  rate: number;
  change: number;
}

export function gapAt(moving: Moving, gap: Gap, into: GapState): void {
  const { build, pose, speed, acceleration, pedal } = moving;
  const { mechanism, parameters: p } = build;
  switch (gap.kind) {
    case 'stop': {
      const { closedStop, openStop } = mechanism.levers[gap.lever]!;
      const sense = mechanism.senses[gap.lever]!;
      const way = gap.which === 'closed' ? 1 : -1;
      const stop = gap.which === 'closed' ? closedStop : openStop;
      into.g = way * (sense * pose.rotation[gap.lever]! - p[stop!.parameter]!);
      into.rate = way * sense * speed[gap.lever]!;
      into.change = way * sense * acceleration[gap.lever]!;
      break;
    }
    case 'pedal-stop':
      into.g = pedal.q;
      into.rate = pedal.v;
      into.change = pedal.a;
      break;
    case 'cable': {
      const { driver, driverEnd, driven, drivenEnd, slack } = gap.joint;
      fillEnd(moving, driven, drivenEnd, one);
      if (driver === undefined || driverEnd === undefined) {
        two.g = pedal.q;
        two.rate = pedal.v;
        two.change = pedal.a;
      } else fillEnd(moving, driver, driverEnd, two);
      const way = drivenEnd.kind === 'pin' ? -1 : 1;
      into.g = p[slack]! + way * one.g - two.g;
      into.rate = way * one.rate - two.rate;
      into.change = way * one.change - two.change;
      break;
    }
    case 'seized': {
      const { driver, driverEnd, driven, drivenEnd } = gap.joint;
      const isDriven = gap.end === 'driven';
      if (isDriven) fillEnd(moving, driven, drivenEnd, one);
      else fillEnd(moving, driver!, driverEnd!, one);
      const way = isDriven && drivenEnd.kind === 'drum' ? 1 : -1;
      into.g = way * one.g + (isDriven ? -gap.taken : gap.taken);
      into.rate = way * one.rate;
      into.change = way * one.change;
      break;
    }
    case 'play':
      fillPlay(moving, gap.joint, gap.side, into);
  }
}

/** What a driving end has pulled since drawn; of a driven drum what it has passed, of a driven pin the negative of that. */
function fillEnd({ build, pose, speed, acceleration }: Moving, lever: number, end: CableEndModel, into: GapState): void {
  const { mechanism, parameters: p } = build;
  const omega = speed[lever]!;
  const alpha = acceleration[lever]!;
  if (end.kind === 'drum') {
    const sense = mechanism.senses[lever]!;
    const { wraps } = end.drum;
    drumAt(end.drum, p, 0, point);
    const zero = point.integral;
    drumAt(end.drum, p, sense * pose.rotation[lever]!, point, sense * omega);
    into.g = wraps * sense * (point.integral - zero);
    into.rate = wraps * point.radius * omega;
    into.change = wraps * (point.slope * sense * omega * omega + point.radius * alpha);
    return;
  }
  fillPin(build, pose, lever, end.pin, omega, alpha, pin);
  fillDistance(p[end.housing]!, p[end.housing + 1]!, p[end.housing + 2]!, still, pin, into);
  into.g -= p[end.drawn]!;
}

/** A pin's place, speed and acceleration. */
export interface PinMotion {
  readonly at: Float64Array;
  readonly speed: Float64Array;
  readonly acceleration: Float64Array;
}

export function createPinMotion(): PinMotion {
  return { at: new Float64Array(3), speed: new Float64Array(3), acceleration: new Float64Array(3) };
}

/** @param pin nine parameters */
export function fillPin(build: Build, pose: Pose, lever: number, pin: number, omega: number, alpha: number, into: PinMotion): void {
  const p = build.parameters;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  for (let axis = 0; axis < 3; axis++) {
    const perp = p[pin + 3 + axis]!;
    const cross = p[pin + 6 + axis]!;
    const arm = c * perp + s * cross;
    const tangent = c * cross - s * perp;
    into.at[axis] = p[pin + axis]! + arm;
    into.speed[axis] = tangent * omega;
    into.acceleration[axis] = tangent * alpha - arm * omega * omega;
  }
}

/** From a place that moves like `first` to a pin. */
function fillDistance(x: number, y: number, z: number, first: PinMotion, to: PinMotion, into: GapState): void {
  const ex = to.at[0]! - x;
  const ey = to.at[1]! - y;
  const ez = to.at[2]! - z;
  const vx = to.speed[0]! - first.speed[0]!;
  const vy = to.speed[1]! - first.speed[1]!;
  const vz = to.speed[2]! - first.speed[2]!;
  const distance = Math.sqrt(ex * ex + ey * ey + ez * ez);
  const rate = (ex * vx + ey * vy + ez * vz) / distance;
  const along =
    ex * (to.acceleration[0]! - first.acceleration[0]!) +
    ey * (to.acceleration[1]! - first.acceleration[1]!) +
    ez * (to.acceleration[2]! - first.acceleration[2]!);
  into.g = distance;
  into.rate = rate;
  into.change = (vx * vx + vy * vy + vz * vz - rate * rate + along) / distance;
}

function fillPlay(moving: Moving, joint: RodJoint | SlotJoint | CouplingJoint, side: 1 | -1, into: GapState): void {
  switch (joint.kind) {
    case 'rod':
      fillRod(moving, joint, side, into);
      break;
    case 'slot':
      fillSlot(moving, joint, side, into);
      break;
    case 'coupling':
      fillCoupling(moving, joint, side, into);
  }
}

/** It pulls (−1) at its length and pushes (+1) at its length less the lost motion. */
function fillRod({ build, pose, speed, acceleration }: Moving, joint: RodJoint, side: 1 | -1, into: GapState): void {
  const { driver, driven, driverPin, drivenPin } = joint;
  const p = build.parameters;
  fillPin(build, pose, driver, driverPin, speed[driver]!, acceleration[driver]!, other);
  fillPin(build, pose, driven, drivenPin, speed[driven]!, acceleration[driven]!, pin);
  fillDistance(other.at[0]!, other.at[1]!, other.at[2]!, other, pin, into);
  const length = p[joint.length]! - (side > 0 && joint.lost !== undefined ? p[joint.lost]! : 0);
  into.g = side * (into.g - length);
  into.rate *= side;
  into.change *= side;
}

/** The pin at the left edge of the play (n·D great) is pressed to the right, and at the right one to the left. */
function fillSlot({ build, pose, speed, acceleration }: Moving, joint: SlotJoint, side: 1 | -1, into: GapState): void {
  const { pinLever, fork } = joint;
  const p = build.parameters;
  const c = pose.cosine[fork]!;
  const s = pose.sine[fork]!;
  const omega = speed[fork]!;
  const alpha = acceleration[fork]!;
  fillPin(build, pose, pinLever, joint.pin, speed[pinLever]!, acceleration[pinLever]!, pin);
  let offset = 0;
  let rate = 0;
  let change = 0;
  for (let axis = 0; axis < 3; axis++) {
    const f0 = p[joint.direction + axis]!;
    const n0 = p[joint.normal + axis]!;
    const f = c * f0 + s * n0;
    const n = c * n0 - s * f0;
    const d = pin.at[axis]! - p[joint.forkPivot + axis]!;
    offset += n * d;
    rate += n * pin.speed[axis]! - f * omega * d;
    change += n * pin.acceleration[axis]! - 2 * f * omega * pin.speed[axis]! - (f * alpha + n * omega * omega) * d;
  }
  const half = joint.play === undefined ? 0 : p[joint.play]! / 2;
  into.g = half + side * (offset - p[joint.offset]!);
  into.rate = side * rate;
  into.change = side * change;
}

function fillCoupling({ build, pose, speed, acceleration }: Moving, joint: CouplingJoint, side: 1 | -1, into: GapState): void {
  const { driver, driven } = joint;
  const { parameters: p, bounds } = build;
  const ratio = p[joint.ratio]!;
  const lag = joint.lag === undefined ? 0 : p[joint.lag]!;
  const ahead = pose.rotation[driven]! - bounds.restRotation[driven]! - ratio * (pose.rotation[driver]! - bounds.restRotation[driver]!);
  into.g = Math.abs(ratio) * lag + side * ahead;
  into.rate = side * (speed[driven]! - ratio * speed[driver]!);
  into.change = side * (acceleration[driven]! - ratio * acceleration[driver]!);
}

const one: GapState = { g: 0, rate: 0, change: 0 };
const two: GapState = { g: 0, rate: 0, change: 0 };
const pin = createPinMotion();
const other = createPinMotion();
const still = createPinMotion();
const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
