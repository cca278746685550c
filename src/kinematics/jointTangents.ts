/**
 * How a joint's driven lever turns when the dimensions change: the tangent of each joint's equation, at a pose that solves it.
 *
 * A pin's place changes by dP = dbase + cos φ dperp + sin φ dcross + t dφ, with t = dP/dφ. Then
 *     rod      e·(dP₂ − dP₁) = L dL
 *     cable    e·(dP₂ − dh) = ℓ (d drawn − d passed); a drum: wraps · sense · (dI(o) − dI(0)) + wraps · r dφ = d passed
 *     slot     dn·D + n·(dP − dF) − reach dφ_fork = d offset, with dn from the fork's own directions
 *     coupling dφ₂ = ratio dφ₁ + φ₁ d ratio
 * Derivation: differentiate the equations of `joints/`.
 */
import type { Build } from './build.ts';
import { drumAt, drumIntegralTangent, type DrumPoint } from './joints/drum.ts';
import { slotFrame, type SlotFrame } from './joints/slot.ts';
import type { CableEndModel, CableJoint, CouplingJoint, DrumModel, Joint, Parameter, RodJoint, SlotJoint } from './model.ts';
import type { Pose } from './pose.ts';

export interface TangentState {
  readonly build: Build;
  readonly pose: Pose;
  /** Change of each parameter. */
  readonly parameterRates: Float64Array;
  /** Change of each lever's rest rotation. */
  readonly restRates: Float64Array;
  /** Change of each lever's rotation; a joint reads its driver's and fills its driven lever's. */
  readonly rotationRates: Float64Array;
}

/** Tangent of a rod, slot or coupling; a cable's depends on what holds it and stands in `sensitivity.ts`. */
export function jointTangent(state: TangentState, joint: Exclude<Joint, CableJoint>): number {
  switch (joint.kind) {
    case 'rod':
      return rodTangent(state, joint);
    case 'slot':
      return slotTangent(state, joint);
    case 'coupling':
      return couplingTangent(state, joint);
  }
}

/** A pin's distance from a fixed place or another pin, along one axis at a time. */
interface PinTangent {
  /** Place, m. */
  place: number;
  /** dP/dφ, m. */
  tangent: number;
  /** Change of the place with the rotation held. */
  shift: number;
}

function pinTangent(
  { build, pose, parameterRates: dp }: TangentState,
  lever: number,
  pin: Parameter,
  axis: number,
  into: PinTangent,
): void {
  const p = build.parameters;
  const c = pose.cosine[lever]!;
  const s = pose.sine[lever]!;
  into.place = p[pin + axis]! + c * p[pin + 3 + axis]! + s * p[pin + 6 + axis]!;
  into.tangent = c * p[pin + 6 + axis]! - s * p[pin + 3 + axis]!;
  into.shift = dp[pin + axis]! + c * dp[pin + 3 + axis]! + s * dp[pin + 6 + axis]!;
}

/** How near a joint with free play must be to the end of it to count as taut, relative. */
const TAUT = 1e-9;

/** Whether a lever that springs hold at rest within free play has been moved from there or is about to be. */
function isMoved({ build, pose }: TangentState, lever: number): boolean {
  return pose.rotation[lever] !== build.bounds.restRotation[lever] || pose.rate[lever] !== 0;
}

function rodTangent(state: TangentState, joint: RodJoint): number {
  const { build, parameterRates: dp, rotationRates, restRates } = state;
  const { driver, driven } = joint;
  let square = 0;
  let along2 = 0;
  let changes = 0;
  for (let axis = 0; axis < 3; axis++) {
    pinTangent(state, driver, joint.driverPin, axis, one);
    pinTangent(state, driven, joint.drivenPin, axis, two);
    const e = two.place - one.place;
    square += e * e;
    along2 += e * two.tangent;
    changes += e * (one.shift + one.tangent * rotationRates[driver]! - two.shift);
  }
  let length = build.parameters[joint.length]!;
  let lengthRate = dp[joint.length]!;
  if (joint.lost !== undefined) {
    const distance = Math.sqrt(square);
    const shortest = length - build.parameters[joint.lost]!;
    const pushes = Math.abs(distance - shortest) < Math.abs(distance - length);
    const nearest = pushes ? shortest : length;
    if (!isMoved(state, driven) || Math.abs(distance - nearest) > TAUT * length) return restRates[driven]!;
    if (pushes) lengthRate -= dp[joint.lost]!;
    length = nearest;
  }
  return (length * lengthRate + changes) / along2;
}

function slotTangent(state: TangentState, joint: SlotJoint): number {
  const { build, pose, parameterRates: dp, rotationRates, restRates } = state;
  const p = build.parameters;
  slotFrame(joint, p, pose, frame);
  let offsetRate = dp[joint.offset]!;
  if (joint.play !== undefined) {
    const from = frame.offset - p[joint.offset]!;
    const half = p[joint.play]! / 2;
    if (!isMoved(state, joint.driven) || Math.abs(Math.abs(from) - half) > TAUT * Math.abs(frame.reach)) return restRates[joint.driven]!;
    offsetRate += (Math.sign(from) * dp[joint.play]!) / 2;
  }
  const c = pose.cosine[joint.fork]!;
  const s = pose.sine[joint.fork]!;
  let changes = 0;
  for (let axis = 0; axis < 3; axis++) {
    pinTangent(state, joint.pinLever, joint.pin, axis, one);
    const n = c * p[joint.normal + axis]! - s * p[joint.direction + axis]!;
    const dn = c * dp[joint.normal + axis]! - s * dp[joint.direction + axis]!;
    changes += dn * (one.place - p[joint.forkPivot + axis]!) + n * (one.shift - dp[joint.forkPivot + axis]!);
  }
  return joint.driven === joint.fork
    ? (changes + frame.normalTangent * rotationRates[joint.pinLever]! - offsetRate) / frame.reach
    : (offsetRate - changes + frame.reach * rotationRates[joint.fork]!) / frame.normalTangent;
}

function couplingTangent(state: TangentState, joint: CouplingJoint): number {
  const { build, pose, parameterRates: dp, rotationRates, restRates } = state;
  const { driver, driven } = joint;
  const ratio = build.parameters[joint.ratio]!;
  if (!joint.oneWay && joint.lag === undefined) return ratio * rotationRates[driver]! + dp[joint.ratio]! * pose.rotation[driver]!;
  if (!isMoved(state, driven)) return restRates[driven]!;
  const since = pose.rotation[driver]! - build.bounds.restRotation[driver]!;
  const way = since === 0 ? Math.sign(pose.rate[driver]!) : Math.sign(since);
  const [lag, lagRate] = joint.lag === undefined ? [0, 0] : [build.parameters[joint.lag]!, dp[joint.lag]!];
  const beyondRate = rotationRates[driver]! - restRates[driver]! - way * lagRate;
  return restRates[driven]! + ratio * beyondRate + dp[joint.ratio]! * (since - way * lag);
}

/** Change of a cable's pull at its driving end. */
export function pullTangent(state: TangentState, joint: CableJoint): number {
  const { build, pose, parameterRates: dp, rotationRates } = state;
  const { driver, driverEnd } = joint;
  if (driver === undefined || driverEnd === undefined) return dp[build.mechanism.drive.travel]! * pose.travel;
  if (driverEnd.kind === 'drum') {
    const wound = drumTangent(state, driver, driverEnd.drum);
    return wound.shift + wound.tangent * rotationRates[driver]!;
  }
  const { along, shift, distance } = housingTangent(state, driver, driverEnd);
  return (shift + along * rotationRates[driver]!) / distance - dp[driverEnd.drawn]!;
}

/** Change of the driven lever's rotation when what reaches the driven end changes by `passedRate`. */
export function drivenEndTangent(state: TangentState, joint: CableJoint, passedRate: number): number {
  const { parameterRates: dp } = state;
  const { driven, drivenEnd } = joint;
  if (drivenEnd.kind === 'drum') {
    const wound = drumTangent(state, driven, drivenEnd.drum);
    return (passedRate - wound.shift) / wound.tangent;
  }
  const { along, shift, distance } = housingTangent(state, driven, drivenEnd);
  return (distance * (dp[drivenEnd.drawn]! - passedRate) - shift) / along;
}

/** What a drum has wound: its derivative by its lever's rotation, and its change with the rotation held. */
function drumTangent(
  { build, pose, parameterRates: dp }: TangentState,
  lever: number,
  drum: DrumModel,
): { shift: number; tangent: number } {
  const p = build.parameters;
  const sense = build.mechanism.senses[lever]!;
  const opening = sense * pose.rotation[lever]!;
  drumAt(drum, p, opening, point);
  const change = drumIntegralTangent(drum, p, dp, opening) - drumIntegralTangent(drum, p, dp, 0);
  return { shift: drum.wraps * sense * change, tangent: drum.wraps * point.radius };
}

/** A pin e from its housing end: e·t, e·(dP − dh) with the rotation held, and |e|. */
function housingTangent(
  state: TangentState,
  lever: number,
  { pin, housing }: CableEndModel & { readonly kind: 'pin' },
): { along: number; shift: number; distance: number } {
  let square = 0;
  let along = 0;
  let shift = 0;
  for (let axis = 0; axis < 3; axis++) {
    pinTangent(state, lever, pin, axis, one);
    const e = one.place - state.build.parameters[housing + axis]!;
    square += e * e;
    along += e * one.tangent;
    shift += e * (one.shift - state.parameterRates[housing + axis]!);
  }
  return { along, shift, distance: Math.sqrt(square) };
}

const one: PinTangent = { place: 0, tangent: 0, shift: 0 };
const two: PinTangent = { place: 0, tangent: 0, shift: 0 };
const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
const frame: SlotFrame = { reach: 0, offset: 0, normalTangent: 0, directionTangent: 0, normalInward: 0 };
