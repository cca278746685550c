/**
 * A cable pulls one end by what its other end was pulled, less its slack; it never pushes.
 *
 * Driving pin: pull = |P₁ − leaves| − drawn. Driving drum: the length wound, negative when it unwinds.
 * x = pull − slack, held between what the driven group's closed and open stops allow.
 * Driven pin: |P₂ − enters| = drawn − x, the rod's equation with a shrinking length ℓ:
 *     e·t₂ φ₂′ = −ℓ x′,   e·t₂ φ₂″ = x′² − ℓ x″ − e·n₂ φ₂′² − |t₂ φ₂′|²   with e = P₂ − enters.
 * Driven drum: turns until the integral of its effective radius over its opening is x.
 */
import type { Bounds } from '../build.ts';
import type { CableEndModel, CableJoint, Mechanism } from '../model.ts';
import { CableState, type Pose } from '../pose.ts';
import { drumAt, openingAtLength, type DrumPoint } from './drum.ts';
import { turnTo } from './turn.ts';

export function moveCable(mechanism: Mechanism, joint: CableJoint, p: Float64Array, bounds: Bounds, pose: Pose): void {
  pullCable(mechanism, joint, p, pose);
  limitCable(joint, p, bounds, pose);
  driveCable(mechanism, joint, p, pose);
}

/** Pull at the driving end and its derivatives along the pedal. */
function pullCable(mechanism: Mechanism, joint: CableJoint, p: Float64Array, pose: Pose): void {
  const { cable, driver, driverEnd } = joint;
  if (driver === undefined || driverEnd === undefined) {
    const travel = p[mechanism.drive.travel]!;
    pose.pull[cable] = travel * pose.travel;
    pose.pullRate[cable] = travel;
    pose.pullCurvature[cable] = 0;
    return;
  }
  const rate = pose.rate[driver]!;
  const curvature = pose.curvature[driver]!;
  if (driverEnd.kind === 'drum') {
    const { drum } = driverEnd;
    const sense = mechanism.senses[driver]!;
    drumAt(drum, p, 0, point);
    const zero = point.integral;
    drumAt(drum, p, sense * pose.rotation[driver]!, point, sense * rate);
    pose.pull[cable] = drum.wraps * sense * (point.integral - zero);
    pose.pullRate[cable] = drum.wraps * point.radius * rate;
    pose.pullCurvature[cable] = drum.wraps * (point.slope * sense * rate * rate + point.radius * curvature);
    return;
  }
  const i = driverEnd.pin;
  const h = driverEnd.housing;
  const c = pose.cosine[driver]!;
  const s = pose.sine[driver]!;
  let square = 0;
  let along = 0;
  let speed = 0;
  let inward = 0;
  for (let axis = 0; axis < 3; axis++) {
    const perp = p[i + 3 + axis]!;
    const cross = p[i + 6 + axis]!;
    const arm = c * perp + s * cross;
    const tangent = c * cross - s * perp;
    const e = p[i + axis]! + arm - p[h + axis]!;
    square += e * e;
    along += e * tangent;
    speed += tangent * tangent;
    inward += e * arm;
  }
  const length = Math.sqrt(square);
  const pullRate = (along / length) * rate;
  pose.pull[cable] = length - p[driverEnd.drawn]!;
  pose.pullRate[cable] = pullRate;
  pose.pullCurvature[cable] = (speed * rate * rate + along * curvature - inward * rate * rate - pullRate * pullRate) / length;
}

/** What is left of the pull after slack and stops. Derivatives are the right-hand ones along the pedal. */
function limitCable(joint: CableJoint, p: Float64Array, bounds: Bounds, pose: Pose): void {
  const { cable } = joint;
  const free = pose.pull[cable]! - p[joint.slack]!;
  const least = bounds.cableRest[cable]!;
  const most = bounds.cableStop[cable]!;
  const rising = pose.pullRate[cable]! > 0;
  if (Number.isNaN(free)) {
    hold(cable, NaN, CableState.moving, pose);
  } else if (free < least - MET || (free <= least + MET && !rising)) {
    hold(cable, Math.max(least, free), CableState.slack, pose);
  } else if (free > most + MET || (free >= most - MET && rising)) {
    hold(cable, Math.min(most, free), CableState.stopped, pose);
    pose.stretch[cable] = Math.max(0, free - most);
  } else {
    pose.passed[cable] = Math.min(most, Math.max(least, free));
    pose.passedRate[cable] = pose.pullRate[cable]!;
    pose.passedCurvature[cable] = pose.pullCurvature[cable]!;
    pose.stretch[cable] = 0;
    pose.cableState[cable] = CableState.moving;
  }
}

/** m; a cable this near to where its slack or its travel ends is there: as drawn it is exactly so, but for rounding. */
const MET = 1e-11;

function hold(cable: number, passed: number, state: number, pose: Pose): void {
  pose.passed[cable] = passed;
  pose.passedRate[cable] = 0;
  pose.passedCurvature[cable] = 0;
  pose.stretch[cable] = 0;
  pose.cableState[cable] = state;
}

/** Turns the driven lever by what has reached it. */
function driveCable(mechanism: Mechanism, joint: CableJoint, p: Float64Array, pose: Pose): void {
  const { cable, driven, drivenEnd } = joint;
  const passed = pose.passed[cable]!;
  const passedRate = pose.passedRate[cable]!;
  const passedCurvature = pose.passedCurvature[cable]!;
  if (drivenEnd.kind === 'drum') {
    const { drum } = drivenEnd;
    const sense = mechanism.senses[driven]!;
    drumAt(drum, p, 0, point);
    const opening = openingAtLength(drum, p, drum.wraps * sense * passed, point.integral, point, drum.wraps * sense * passedRate);
    const rotation = sense * opening;
    const rate = (drum.wraps * passedRate) / point.radius;
    pose.rotation[driven] = rotation;
    pose.cosine[driven] = Math.cos(rotation);
    pose.sine[driven] = Math.sin(rotation);
    pose.rate[driven] = rate;
    pose.curvature[driven] = (drum.wraps * passedCurvature - point.slope * sense * rate * rate) / point.radius;
    return;
  }
  const length = p[drivenEnd.drawn]! - passed;
  const k = drivenEnd.pin;
  const h = drivenEnd.housing;
  let a = 0;
  let b = 0;
  let squares = -length * length;
  let arm = 0;
  for (let axis = 0; axis < 3; axis++) {
    const d = p[h + axis]! - p[k + axis]!;
    const perp = p[k + 3 + axis]!;
    a += perp * d;
    b += p[k + 6 + axis]! * d;
    arm += perp * perp;
    squares += d * d;
  }
  const s = turnTo(pose, driven, a, b, length >= 0 ? 0.5 * (arm + squares) : NaN, p[joint.side]!);
  pose.rotation[driven] = Math.atan2(pose.sine[driven]!, pose.cosine[driven]!);
  const rate = passedRate === 0 ? 0 : (length * passedRate) / s;
  pose.rate[driven] = rate;
  if (passedRate === 0 && passedCurvature === 0) {
    pose.curvature[driven] = 0;
    return;
  }
  // e·n₂ = −e·v = −(|perp|² − v·D), and v·D = A cos φ + B sin φ.
  const inward = -(arm - (a * pose.cosine[driven]! + b * pose.sine[driven]!));
  pose.curvature[driven] = -(passedRate * passedRate - length * passedCurvature - inward * rate * rate - arm * rate * rate) / s;
}

/**
 * What the driven end of a cable has moved since drawn at a given rotation of its lever: the inverse of the drive.
 * m, positive the way a pull moves it.
 */
export function passedAt(mechanism: Mechanism, end: CableEndModel, lever: number, p: Float64Array, rotation: number): number {
  if (end.kind === 'drum') {
    const sense = mechanism.senses[lever]!;
    drumAt(end.drum, p, 0, point);
    const zero = point.integral;
    drumAt(end.drum, p, sense * rotation, point);
    return end.drum.wraps * sense * (point.integral - zero);
  }
  const c = Math.cos(rotation);
  const s = Math.sin(rotation);
  const at = (axis: number): number =>
    p[end.pin + axis]! + c * p[end.pin + 3 + axis]! + s * p[end.pin + 6 + axis]! - p[end.housing + axis]!;
  return p[end.drawn]! - Math.hypot(at(0), at(1), at(2));
}

const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
