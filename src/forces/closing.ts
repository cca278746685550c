/**
 * Closing torque at every lever, cable tensions and what the pedal feels, without friction, by virtual work.
 *
 * Levers joined by rods, slots and couplings move as one body, with uᵢ the opening of lever i for one radian of opening of the body's
 * first lever. The body closes with
 *     Q = Σ Mᵢ uᵢ + Σ T aᵢ uᵢ
 * where Mᵢ are the springs' closing torques, and T the tensions of the cables that its levers pull, on their arms a. The closing torque
 * at lever i is Q / uᵢ. A cable passes what closes the body behind it as T = max(0, Q / a), never the other way: it cannot push. Past an
 * open stop it stretches besides. A coupling that only pushes open works like a cable; where free play is not taken up, each side is
 * left to its own springs.
 */
import type { SpringModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import { CableState, type Pose } from '../kinematics/pose.ts';
import { size, vectorAt } from '../numeric/vector.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { passedArm, pullArm } from './cableArms.ts';
import type { Body } from '../kinematics/rest.ts';
import { createMotion, type Motion } from './motion.ts';
import { createSpringState, fillSpring, type SpringState } from './springs.ts';

/** What acts at one station. One is filled again by each call of `at`: read it before the next. */
export interface Statics {
  /** Closing torque at each lever, N·m; NaN where it has none: not assembled, at a dead centre, or a spring unknown. */
  readonly closing: Float64Array;
  /** Of each cable, N, never negative. NaN where it cannot be told, as past an open stop without a stiffness. */
  readonly tension: Float64Array;
  /** Opening of each lever for one radian of its body's first lever. */
  readonly unit: Float64Array;
  /** Closing torque of the springs on each lever itself, N·m. */
  readonly springs: Float64Array;
  /** Force at the pad, or in the cable's pedal end where no pad is known, N; NaN without either. */
  effort: number;
}

export interface StaticsSolver {
  /** @param without name of a spring that is taken off */
  at(pose: Pose, without?: string): Statics;
  /** What each spring does in the pose of the last call of `at`, in the order of the mechanism's. */
  readonly each: readonly SpringState[];
  /** On which arms the cables work there, by their index. */
  readonly arms: CableArms;
  /**
   * Q of some bodies there, as it is where other springs work on them.
   * @param isChanged by body; with each that has changed the one that it hangs on has
   * @param springs their closing torque at each lever @param into by body; what of it concerns no changed body means nothing
   */
  closesAnew(pose: Pose, isChanged: readonly boolean[], springs: Float64Array, into: Float64Array): void;
}

/** Of each cable by its index, m a radian; see `cableArms.ts`. */
export interface CableArms {
  readonly pull: Float64Array;
  readonly passed: Float64Array;
}

/** @param motion of the same build; what it holds after a call of `at` is of that pose */
export function createStatics(build: Build, motion: Motion = createMotion(build)): StaticsSolver {
  const { mechanism } = build;
  const levers = mechanism.levers.length;
  const cables = mechanism.cables.length;
  const springs = new Float64Array(levers);
  const tension = new Float64Array(cables);
  const bodies = motion.bodies.length;
  const context: Context = {
    build,
    motion,
    springs,
    each: mechanism.attached.springs.map(createSpringState),
    arms: { pull: new Float64Array(cables), passed: new Float64Array(cables) },
    closes: new Float64Array(bodies),
    brought: new Float64Array(bodies),
    spare: { brought: new Float64Array(bodies), tension: new Float64Array(cables) },
    cableOf: motion.bodies.map(({ root }) => mechanism.groups.find((group) => group.root === root)?.cable),
    before: motion.bodies.map((body) => bodyBefore(build, motion, body)),
    statics: { closing: new Float64Array(levers), tension, unit: motion.unit, springs, effort: NaN },
  };
  return {
    each: context.each,
    arms: context.arms,
    at(pose, without) {
      fillSprings(context, pose, without);
      fillArms(context, pose);
      motion.at(pose);
      fillClosing(context, pose);
      return context.statics;
    },
    closesAnew(pose, isChanged, anew, into) {
      const { brought, before, spare } = context;
      into.fill(0);
      for (let i = into.length - 1; i >= 0; i--) {
        if (isChanged[i]) bring(context, pose, i, anew, into, spare);
        else add(into, before[i]!, brought[i]!);
      }
    },
  };
}

/** The body that another hangs on, by a joint with free play or by a cable; −1 for that of the pedal. */
function bodyBefore({ mechanism }: Build, { bodyOf }: Motion, { root }: Body): number {
  const joint = mechanism.joints[mechanism.levers[root]!.driver ?? -1];
  return joint?.driver === undefined ? -1 : bodyOf[joint.driver]!;
}

interface Context {
  readonly build: Build;
  readonly motion: Motion;
  /** Closing torque of the springs at each lever. */
  readonly springs: Float64Array;
  readonly each: readonly SpringState[];
  readonly arms: CableArms;
  /** Q of each body, N·m for a radian of its first lever's opening. */
  readonly closes: Float64Array;
  /** What of it each brings to the body that it hangs on, for a radian of that one. */
  readonly brought: Float64Array;
  /** For what is not to be kept. */
  readonly spare: Pick<Context, 'brought'> & Pick<Statics, 'tension'>;
  /** The cable that drives each body. */
  readonly cableOf: readonly (number | undefined)[];
  readonly before: readonly number[];
  readonly statics: Statics;
}

function fillSprings({ build, springs, each }: Context, pose: Pose, without: string | undefined): void {
  springs.fill(0);
  const all = build.mechanism.attached.springs;
  for (let i = 0; i < all.length; i++) {
    const spring = all[i]!;
    const state = each[i]!;
    fillSpring(build, pose, spring, state);
    if (spring.name !== without) addTorque(spring, state, springs);
  }
}

/** @param springs closing torque at each lever, to which it is added @param only the lever that it is added to, all where absent */
export function addTorque(spring: SpringModel, { closing, fromClosing }: SpringState, springs: Float64Array, only?: number): void {
  if (only === undefined || only === spring.lever) springs[spring.lever] = springs[spring.lever]! + closing;
  if (spring.kind === 'torsion' || spring.from.kind === 'place') return;
  const { lever } = spring.from;
  if (only === undefined || only === lever) springs[lever] = springs[lever]! + fromClosing;
}

function fillArms({ build, arms }: Context, pose: Pose): void {
  const { cables } = build.mechanism;
  for (let i = 0; i < cables.length; i++) {
    arms.pull[i] = pullArm(build, pose, cables[i]!);
    arms.passed[i] = passedArm(build, pose, cables[i]!);
  }
}

function fillClosing(context: Context, pose: Pose): void {
  const { build, springs, closes, brought, statics } = context;
  const { bodies, bodyOf, links, unit } = context.motion;
  const { closing, tension } = statics;
  closes.fill(0);
  const kept = { brought, tension };
  for (let i = bodies.length - 1; i >= 0; i--) bring(context, pose, i, springs, closes, kept);
  for (let i = 0; i < bodies.length; i++) {
    const { levers, driver } = bodies[i]!;
    const { state, gain } = links[i]!;
    // Joined across taken-up play, a body closes with all that the one before it has, this one's own share included.
    if (state === 'joined' && driver !== undefined && driver.kind !== 'cable') closes[i] = closes[bodyOf[driver.driver]!]! / gain;
    for (let k = 0; k < levers.length; k++) closing[levers[k]!] = finite(closes[i]! / unit[levers[k]!]!);
  }
  for (let lever = 0; lever < closing.length; lever++) if (bodyOf[lever] === -1) closing[lever] = springs[lever]!;
  statics.effort = effortOf(build, statics);
}

/** Adds up what closes one body, and brings its share to the one that it hangs on. */
function bring(
  { build, motion, arms, cableOf, before }: Context,
  pose: Pose,
  i: number,
  springs: Float64Array,
  closes: Float64Array,
  { brought, tension }: Context['spare'],
): void {
  const { levers, driver } = motion.bodies[i]!;
  const { unit } = motion;
  let sum = closes[i]!;
  for (let k = 0; k < levers.length; k++) sum += springs[levers[k]!]! * unit[levers[k]!]!;
  closes[i] = sum;
  const { state, gain } = motion.links[i]!;
  let share = 0;
  if (driver !== undefined && driver.kind !== 'cable' && state !== 'loose') {
    share = (state === 'pushed' ? Math.max(0, sum) : sum) * gain;
  }
  const cable = cableOf[i];
  if (cable !== undefined) {
    const joint = build.mechanism.cables[cable]!;
    const pulls = tensionOf(build, pose, joint, sum, arms.passed[cable]!);
    tension[cable] = pulls;
    if (joint.driver !== undefined && pulls !== 0) {
      share = pulls * (build.mechanism.senses[joint.driver]! * arms.pull[cable]! * unit[joint.driver]!);
    }
  }
  brought[i] = share;
  add(closes, before[i]!, share);
}

function add(sums: Float64Array, index: number, amount: number): void {
  if (index >= 0) sums[index] = sums[index]! + amount;
}

/** At a dead centre a lever is held by nothing of what hangs before it. */
export function finite(value: number): number {
  return Number.isFinite(value) ? value : NaN;
}

/** @param closes Q of the body that the cable pulls, for a radian of the lever that it pulls @param passed arm on which it does */
function tensionOf(build: Build, pose: Pose, joint: CableJoint, closes: number, passed: number): number {
  const state = pose.cableState[joint.cable]!;
  if (Number.isNaN(pose.passed[joint.cable]!)) return NaN;
  if (state === CableState.slack) return 0;
  const arm = build.mechanism.senses[joint.driven]! * passed;
  const held = Math.max(0, finite(closes / arm));
  const stretch = pose.stretch[joint.cable]!;
  if (!(stretch > 0)) return held;
  const { stiffness } = build.mechanism.attached;
  const parameter = stiffness[joint.cable];
  return parameter === undefined ? NaN : held + build.parameters[parameter]! * stretch;
}

function effortOf({ mechanism, parameters }: Build, { closing, tension }: Statics): number {
  const { drive } = mechanism;
  const { pad } = mechanism.attached;
  if (drive.kind === 'cable') {
    const joint = mechanism.joints[drive.joint]!;
    const pull = joint.kind === 'cable' ? tension[joint.cable]! : NaN;
    return pad?.kind === 'cable' && pad.ratio !== undefined ? pull / parameters[pad.ratio]! : pull;
  }
  return pad?.kind === 'arm' ? closing[drive.lever]! / size(vectorAt(parameters, pad.pin + 3)) : NaN;
}
