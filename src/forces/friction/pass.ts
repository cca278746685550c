/**
 * Forces along the load path with friction, one way of the pedal, by free bodies: from the plates' end to the pedal each lever is cut
 * free, and the joint that drives it must hold it against all that acts on it (`holding.ts`), on the joint's line with its friction
 * (`line.ts`); what it takes, it brings to the lever before.
 *
 * Bearings carry the whole of the forces on their lever, along the axis too; that forces off the bearing's middle tilt the lever is left
 * out. A coupling brings a torque alone: what presses its wheels apart is left out.
 */
import type { Build } from '../../kinematics/build.ts';
import type { CableJoint, CouplingJoint, Joint, RodJoint, SlotJoint } from '../../kinematics/model.ts';
import { CableState, type Pose } from '../../kinematics/pose.ts';
import type { Motion } from '../motion.ts';
import { holdingForce, unheld, type FreeLever } from './holding.ts';
import type { CableLine, Lines } from './lines.ts';
import { createLine, type JointLine } from './line.ts';
import { fillPad, type Loads, type PadForce } from './loads.ts';

/** One way of the pedal. */
export interface Pass {
  /** +1 pressing, −1 coming back. */
  direction: 1 | -1;
  /** Of each joint by index: w s of its line, N; the torque on the driven lever of a coupling, N·m; the tension at a cable's engine end. */
  readonly force: Float64Array;
  /** Tension at each cable's pedal end, N. */
  readonly tension: Float64Array;
  /** Load on each lever's bearing, N, that of the plates with it; 0 without a bearing. */
  readonly bearing: Float64Array;
  /** By body, where no joint joins it both ways: torque that holds its first lever against closing, N·m; negative where it must be pushed. */
  readonly net: Float64Array;
  /** By body, how many joints that must push one of its levers cannot: their force passes within a friction circle. */
  readonly jammed: Uint8Array;
  /** By joint, whether it is one of them. */
  readonly jams: Uint8Array;
  /** What each joint brings to its driving lever: moment about its axis, N·m, and force, N. Four figures a joint. */
  readonly brought: Float64Array;
  /** Force at the pad that holds the pedal, N; NaN without a pad. */
  pad: number;
}

export interface PassContext {
  readonly build: Build;
  readonly motion: Motion;
  readonly lines: Lines;
  readonly loads: Loads;
  /** By body: +1 where it opens as the pedal is pressed, −1 where it closes, 0 where the pedal does not move it. */
  readonly ways: Int8Array;
  /** By body: the first body of those that joints join both ways. */
  readonly joinedTo: Int32Array;
}

export function createPass({ mechanism }: Build, bodies: number): Pass {
  return {
    direction: 1,
    force: new Float64Array(mechanism.joints.length),
    tension: new Float64Array(mechanism.cables.length),
    bearing: new Float64Array(mechanism.levers.length),
    net: new Float64Array(bodies),
    jammed: new Uint8Array(bodies),
    jams: new Uint8Array(mechanism.joints.length),
    brought: new Float64Array(4 * mechanism.joints.length),
    pad: NaN,
  };
}

/** @param direction +1 pressing, −1 coming back @param carried scratch, one of the build's loads */
export function goThrough(context: PassContext, pose: Pose, direction: 1 | -1, carried: Loads, pass: Pass): void {
  const { build, loads } = context;
  const { joints, drive } = build.mechanism;
  for (let i = 0; i < loads.moment.length; i++) load(carried, loads, i);
  for (let i = 0; i < pass.jammed.length; i++) pass.jammed[i] = 0;
  pass.direction = direction;
  const work: Work = { context, pose, direction, carried, pass };
  for (let i = joints.length - 1; i >= 0; i--) holdBy(work, joints[i]!);
  pass.pad = NaN;
  if (drive.kind === 'lever') holdPedal(work, drive.lever);
}

/** Levers on which something else acts than in a pass before, and all that they hang on. */
export interface Changed {
  /** Those levers. */
  readonly levers: readonly number[];
  /** The joints that work on them, the ones behind first. */
  readonly joints: readonly Joint[];
  /** By their place among these, whether one drives such a lever: what the others bring is what it was. */
  readonly isHolding: readonly boolean[];
}

/**
 * The same way of the pedal once more, through what has changed alone. Of the pass only what concerns the changed levers is filled.
 * @param known the pass before
 */
export function goThroughChanged(context: PassContext, pose: Pose, carried: Loads, changed: Changed, known: Pass, pass: Pass): void {
  const { build, loads, joinedTo, motion } = context;
  const { levers, joints, isHolding } = changed;
  const { drive } = build.mechanism;
  pass.direction = known.direction;
  for (let i = 0; i < levers.length; i++) load(carried, loads, levers[i]!);
  for (let i = 0; i < pass.jammed.length; i++) pass.jammed[i] = known.jammed[i]!;
  for (let i = 0; i < joints.length; i++) {
    const { index, driven } = joints[i]!;
    if (!isHolding[i] || known.jams[index] === 0) continue;
    const body = joinedTo[motion.bodyOf[driven]!]!;
    pass.jammed[body] = pass.jammed[body]! - 1;
  }
  const work: Work = { context, pose, direction: known.direction, carried, pass };
  for (let i = 0; i < joints.length; i++) {
    const joint = joints[i]!;
    if (isHolding[i]) holdBy(work, joint);
    else if (joint.driver !== undefined) bring(carried, joint.driver, known.brought, joint.index);
  }
  if (drive.kind === 'lever' && levers.includes(drive.lever)) holdPedal(work, drive.lever);
}

/** Written out: on so few figures the built-in copying takes longer. */
function load(carried: Loads, loads: Loads, lever: number): void {
  carried.moment[lever] = loads.moment[lever]!;
  carried.x[lever] = loads.x[lever]!;
  carried.y[lever] = loads.y[lever]!;
  carried.z[lever] = loads.z[lever]!;
}

/** Adds to a lever what a joint brings to it. */
function bring(carried: Loads, lever: number, brought: Float64Array, joint: number): void {
  const at = 4 * joint;
  carried.moment[lever] = carried.moment[lever]! + brought[at]!;
  carried.x[lever] = carried.x[lever]! + brought[at + 1]!;
  carried.y[lever] = carried.y[lever]! + brought[at + 2]!;
  carried.z[lever] = carried.z[lever]! + brought[at + 3]!;
}

function holdBy(work: Work, joint: Joint): void {
  work.pass.jams[joint.index] = 0;
  if (joint.kind === 'cable') holdByCable(work, joint);
  else holdByJoint(work, joint);
}

function holdPedal(work: Work, lever: number): void {
  const { context, pose, pass } = work;
  cutFree(work, lever);
  fillNet(work, lever);
  const arm = context.build.mechanism.attached.pad;
  if (arm?.kind !== 'arm') {
    fillBearing(work, lever, 0, 0, 0);
    return;
  }
  fillPad(context.build, pose, lever, arm.pin, pad);
  const { x, y, z } = pad;
  const force = heldBare(pad.arm, pad);
  pass.pad = force;
  fillBearing(work, lever, force * x, force * y, force * z);
}

interface Work {
  readonly context: PassContext;
  readonly pose: Pose;
  readonly direction: 1 | -1;
  /** Loads with what the joints behind bring. */
  readonly carried: Loads;
  readonly pass: Pass;
}

/**
 * Of the free lever in `free`, signed along its opening-side line: see `line.ts`. NaN where the line cannot turn the lever.
 * @param way of the joint as it moves, +1, −1 or 0
 */
function held({ arm, gx, gy, gz, armFriction, hx, hy, hz }: JointLine, way: number): number {
  const turns = unheld(free);
  if (turns === 0) return 0;
  const side = turns * arm < 0 ? 1 : -1;
  const whole = side * arm + way * armFriction;
  if (!(side * arm * whole > 0)) return NaN;
  return side * holdingForce(free, whole, side * gx + way * hx, side * gy + way * hy, side * gz + way * hz);
}

/** The same on a line without friction of its own. */
function heldBare(arm: number, { x, y, z }: Readonly<Force>): number {
  bare.arm = arm;
  bare.gx = x;
  bare.gy = y;
  bare.gz = z;
  return held(bare, 0);
}

/** N or, for a way, of length 1. */
interface Force {
  x: number;
  y: number;
  z: number;
}

const bare = createLine();

function holdByJoint(work: Work, joint: RodJoint | SlotJoint | CouplingJoint): void {
  const { context, pass, direction } = work;
  const { motion, lines, ways } = context;
  const { driven, driver, index } = joint;
  const body = motion.bodyOf[driven]!;
  const link = motion.bodies[body]!.driver === joint ? motion.links[body]! : undefined;
  cutFree(work, driven);
  if (link !== undefined && link.state !== 'joined') fillNet(work, driven);
  const line = lines.joints[index]!;
  const way = direction * ways[motion.bodyOf[driver]!]!;
  let force = link?.state === 'loose' ? 0 : held(line, way);
  // What only pushes open holds nothing that must be held back from opening.
  if (link?.state === 'pushed' && force * context.build.mechanism.senses[driven]! < 0) force = 0;
  if (Number.isNaN(force) && unheld(free) * free.way < 0) {
    const first = context.joinedTo[body]!;
    pass.jammed[first] = pass.jammed[first]! + 1;
    pass.jams[index] = 1;
  }
  pass.force[index] = force;
  const size = Math.abs(force);
  const x = force * line.gx + size * (way * line.hx);
  const y = force * line.gy + size * (way * line.hy);
  const z = force * line.gz + size * (way * line.hz);
  fillBearing(work, driven, x, y, z);
  if (force === 0) keep(pass, index, 0, 0, 0, 0);
  else {
    keep(pass, index, force * line.back + size * way * line.backFriction, -x, -y, -z);
    bring(work.carried, driver, pass.brought, index);
  }
}

function keep({ brought }: Pass, index: number, moment: number, x: number, y: number, z: number): void {
  const at = 4 * index;
  brought[at] = moment;
  brought[at + 1] = x;
  brought[at + 2] = y;
  brought[at + 3] = z;
}

function holdByCable(work: Work, joint: CableJoint): void {
  const { context, pose, pass, direction } = work;
  const { driven, driver, index, cable } = joint;
  const line = context.lines.cables[cable]!;
  cutFree(work, driven);
  fillNet(work, driven);
  const tension = tensionOf(work, joint, line);
  pass.force[index] = tension;
  fillBearing(work, driven, tension * line.driven.x, tension * line.driven.y, tension * line.driven.z);
  // As the pedal is pressed the inner moves towards it, unless what lies between turns the other way.
  const way = direction * cableWay(context, joint);
  const before = way > 0 ? tension * line.ratio : way < 0 ? tension / line.ratio : tension;
  pass.tension[cable] = before;
  if (driver === undefined || tension === 0 || Number.isNaN(pose.rotation[driver]!)) keep(pass, index, 0, 0, 0, 0);
  else {
    const { draws, driving } = line;
    keep(pass, index, before * draws, before * driving.x, before * driving.y, before * driving.z);
    bring(work.carried, driver, pass.brought, index);
  }
}

/** At the engine's end, N: what holds the lever there, and past an open stop what the cable is stretched by. */
function tensionOf({ context: { build }, pose }: Work, { cable }: CableJoint, { pulls, driven }: CableLine): number {
  if (Number.isNaN(pose.passed[cable]!)) return NaN;
  if (pose.cableState[cable] === CableState.slack) return 0;
  // It pulls and never presses.
  const tension = unheld(free) * pulls > 0 ? 0 : heldBare(pulls, driven);
  const stretch = pose.stretch[cable]!;
  if (!(stretch > 0)) return tension;
  const stiffness = build.mechanism.attached.stiffness[cable];
  return stiffness === undefined ? NaN : tension + build.parameters[stiffness]! * stretch;
}

/** Which way a cable moves as the pedal is pressed: +1 where it is pulled. */
export function cableWay({ build, motion, lines, ways }: PassContext, { driver, cable }: CableJoint): number {
  if (driver === undefined) return 1;
  const pulled = -build.mechanism.senses[driver]! * lines.cables[cable]!.draws * motion.unit[driver]!;
  return Math.sign(pulled) * ways[motion.bodyOf[driver]!]!;
}

/** The lever cut free at last. */
const free: FreeLever = { moment: 0, x: 0, y: 0, z: 0, drag: 0, radius: 0, way: 0 };

const pad: PadForce = { x: 0, y: 0, z: 0, arm: 0 };

function cutFree({ context: { build, loads, motion, ways }, carried, direction }: Work, lever: number): void {
  free.moment = carried.moment[lever]!;
  free.x = carried.x[lever]!;
  free.y = carried.y[lever]!;
  free.z = carried.z[lever]!;
  free.drag = loads.drag[lever]!;
  free.radius = loads.radius[lever]!;
  free.way = Math.sign(build.mechanism.senses[lever]! * motion.unit[lever]!) * direction * ways[motion.bodyOf[lever]!]!;
}

/** With nothing to hold the first lever of a body, which stands in `free`. */
function fillNet({ context: { build, motion }, pass }: Work, lever: number): void {
  pass.net[motion.bodyOf[lever]!] = -build.mechanism.senses[lever]! * unheld(free);
}

/** @param x what holds the lever in `free`, N */
function fillBearing({ context: { loads }, pass }: Work, lever: number, x: number, y: number, z: number): void {
  if (loads.radius[lever] === 0) pass.bearing[lever] = 0;
  else pass.bearing[lever] = Math.sqrt((free.x + x) ** 2 + (free.y + y) ** 2 + (free.z + z) ** 2) + loads.plates[lever]!;
}
