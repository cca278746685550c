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
import type { Build } from '../kinematics/build.ts';
import { CableState, type Pose } from '../kinematics/pose.ts';
import { size, vectorAt } from '../numeric/vector.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { passedArm, pullArm } from './cableArms.ts';
import { createMotion, type Motion } from './motion.ts';
import { springTorques } from './springs.ts';

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
}

/** @param motion of the same build; what it holds after a call of `at` is of that pose */
export function createStatics(build: Build, motion: Motion = createMotion(build)): StaticsSolver {
  const { mechanism } = build;
  const levers = mechanism.levers.length;
  const springs = new Float64Array(levers);
  const context: Context = {
    build,
    motion,
    springs,
    closes: new Float64Array(motion.bodies.length),
    cableOf: motion.bodies.map(({ root }) => mechanism.groups.find((group) => group.root === root)?.cable),
    statics: {
      closing: new Float64Array(levers),
      tension: new Float64Array(mechanism.cables.length),
      unit: motion.unit,
      springs,
      effort: NaN,
    },
  };
  return {
    at(pose, without) {
      fillSprings(context, pose, without);
      motion.at(pose);
      fillClosing(context, pose);
      return context.statics;
    },
  };
}

interface Context {
  readonly build: Build;
  readonly motion: Motion;
  /** Closing torque of the springs at each lever. */
  readonly springs: Float64Array;
  /** Q of each body, N·m for a radian of its first lever's opening. */
  readonly closes: Float64Array;
  /** The cable that drives each body. */
  readonly cableOf: readonly (number | undefined)[];
  readonly statics: Statics;
}

function fillSprings({ build, springs }: Context, pose: Pose, without: string | undefined): void {
  springs.fill(0);
  for (const spring of build.mechanism.attached.springs) {
    if (spring.name === without) continue;
    for (const { lever, closing } of springTorques(build, pose, spring)) springs[lever] = springs[lever]! + closing;
  }
}

function fillClosing(context: Context, pose: Pose): void {
  const { build, springs, closes, statics, cableOf } = context;
  const { bodies, bodyOf, links, unit } = context.motion;
  const { closing, tension } = statics;
  closes.fill(0);
  for (let i = bodies.length - 1; i >= 0; i--) {
    const { levers, driver } = bodies[i]!;
    let sum = closes[i]!;
    for (const lever of levers) sum += springs[lever]! * unit[lever]!;
    closes[i] = sum;
    const { state, gain } = links[i]!;
    if (driver !== undefined && driver.kind !== 'cable' && state !== 'loose') {
      add(closes, bodyOf[driver.driver], (state === 'pushed' ? Math.max(0, sum) : sum) * gain);
    }
    const cable = cableOf[i];
    if (cable === undefined) continue;
    const joint = build.mechanism.cables[cable]!;
    tension[cable] = tensionOf(build, pose, joint, sum);
    if (joint.driver === undefined) continue;
    const arm = build.mechanism.senses[joint.driver]! * pullArm(build, pose, joint) * unit[joint.driver]!;
    add(closes, bodyOf[joint.driver], tension[cable] === 0 ? 0 : tension[cable] * arm);
  }
  bodies.forEach(({ levers, driver }, i) => {
    const { state, gain } = links[i]!;
    // Joined across taken-up play, a body closes with all that the one before it has, this one's own share included.
    if (state === 'joined' && driver !== undefined && driver.kind !== 'cable') closes[i] = closes[bodyOf[driver.driver]!]! / gain;
    for (const lever of levers) closing[lever] = finite(closes[i]! / unit[lever]!);
  });
  for (const lever of build.mechanism.levers) if (bodyOf[lever.index] === -1) closing[lever.index] = springs[lever.index]!;
  statics.effort = effortOf(build, statics);
}

function add(sums: Float64Array, index: number | undefined, amount: number): void {
  if (index !== undefined && index >= 0) sums[index] = sums[index]! + amount;
}

/** At a dead centre a lever is held by nothing of what hangs before it. */
function finite(value: number): number {
  return Number.isFinite(value) ? value : NaN;
}

/** @param closes Q of the body that the cable pulls, for a radian of the lever that it pulls */
function tensionOf(build: Build, pose: Pose, joint: CableJoint, closes: number): number {
  const state = pose.cableState[joint.cable]!;
  if (Number.isNaN(pose.passed[joint.cable]!)) return NaN;
  if (state === CableState.slack) return 0;
  const arm = build.mechanism.senses[joint.driven]! * passedArm(build, pose, joint);
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
