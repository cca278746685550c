/**
 * What acts along the load path with friction: pressing, when friction works against opening, and coming back, when it works against
 * closing. Without any friction both are what virtual work gives (`closing.ts`).
 */
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { createStatics, type Statics } from '../closing.ts';
import { marginOf } from './margin.ts';
import { createSpringsOff, type SpringOff } from './springsOff.ts';
import { createMotion } from '../motion.ts';
import { createLines, fillLines } from './lines.ts';
import { createLoads, fillLoads } from './loads.ts';
import { cableWay, createPass, goThrough, type Pass, type PassContext } from './pass.ts';

/** What acts at one station. One is filled again by each call of `at`: read it before the next. */
export interface FrictionStatics {
  /** The same without friction. */
  readonly frictionless: Statics;
  readonly pressing: Pass;
  readonly releasing: Pass;
  /** Force that presses on, where `Statics.effort` is; NaN where that is not known, and where a joint jams. */
  effort: number;
  /** Least force that still holds the pedal on its way back, N: 0 where friction holds it, and never above `effort`. */
  release: number;
  /**
   * By lever: closing torque over the friction that it must overcome, with all that it moves and nothing to hold it. 1 and less where it
   * does not come back, 0 where a joint jams on the way, infinite where nothing rubs, NaN where the closing torque is not known.
   */
  readonly margin: Float64Array;
}

export interface FrictionSolver {
  /** @param without name of a spring that is taken off */
  at(pose: Pose, without?: string): FrictionStatics;
  /** The same for what comes back alone: margins and the frictionless forces; what the pedal feels and the pass of pressing mean nothing. */
  comingBack(pose: Pose, without?: string): Pick<FrictionStatics, 'frictionless' | 'margin'>;
  /** The same with one spring off, as it stands after a call of `at` or `comingBack` with all on. @param number among the mechanism's springs */
  springOff(pose: Pose, number: number): SpringOff;
  /** Without friction alone: for places where only closing torques are asked for. */
  frictionless(pose: Pose): Statics;
  /** The levers that can then stand otherwise: those of `SpringOff`. */
  changedBy(number: number): readonly number[];
}

export function createFriction(build: Build): FrictionSolver {
  const { mechanism } = build;
  const motion = createMotion(build);
  const statics = createStatics(build, motion);
  const lines = createLines(build);
  const loads = createLoads(build);
  const carried = createLoads(build);
  const isLoaded = mechanism.friction.levers.map(({ bearing }) => bearing !== undefined);
  const bodies = motion.bodies.length;
  const context: Context = {
    build,
    motion,
    lines,
    loads,
    ways: new Int8Array(bodies),
    joinedTo: new Int32Array(bodies),
    cableOf: motion.bodies.map(({ root }) => mechanism.groups.find((group) => group.root === root)?.cable),
  };
  const off = createSpringsOff({ ...context, statics, carried });
  let answer: FrictionStatics | undefined;
  const stand = (pose: Pose, without: string | undefined): FrictionStatics => {
    const frictionless = statics.at(pose, without);
    answer ??= {
      frictionless,
      pressing: createPass(build, bodies),
      releasing: createPass(build, bodies),
      effort: NaN,
      release: NaN,
      margin: new Float64Array(mechanism.levers.length),
    };
    fillLines(build, pose, motion, isLoaded, lines, statics.arms);
    fillLoads(build, pose, frictionless.springs, without, loads, statics.each);
    fillWays(context);
    goThrough(context, pose, -1, carried, answer.releasing);
    return answer;
  };
  return {
    at(pose, without) {
      const found = stand(pose, without);
      goThrough(context, pose, 1, carried, found.pressing);
      // What is not known without friction is not known with it.
      found.effort = Number.isNaN(found.frictionless.effort) ? NaN : atFoot(build, found.pressing);
      found.release = Math.min(found.effort, Math.max(0, atFoot(build, found.releasing)));
      fillMargins(context, found);
      return found;
    },
    comingBack(pose, without) {
      const found = stand(pose, without);
      // What closes as the pedal is pressed comes back as it is pressed.
      if (context.ways.includes(-1)) goThrough(context, pose, 1, carried, found.pressing);
      fillMargins(context, found);
      return found;
    },
    springOff: (pose, number) => off.at(pose, number, answer ?? stand(pose, undefined)),
    frictionless: (pose) => statics.at(pose),
    changedBy: off.changedBy,
  };
}

interface Context extends PassContext {
  /** The cable that drives each body. */
  readonly cableOf: readonly (number | undefined)[];
}

/** Which way each body goes as the pedal is pressed, and with which bodies it goes to and fro. */
function fillWays(context: Context): void {
  const { build, motion, ways, joinedTo } = context;
  const { bodies, bodyOf, links } = motion;
  const { cables } = build.mechanism;
  for (let i = 0; i < bodies.length; i++) {
    const { root, driver } = bodies[i]!;
    joinedTo[i] = i;
    ways[i] = 1;
    if (driver !== undefined && driver.kind !== 'cable') {
      const before = bodyOf[driver.driver]!;
      const { state, gain } = links[i]!;
      if (state === 'joined') joinedTo[i] = joinedTo[before]!;
      // Within free play it stands; if it moved, its springs would close it.
      if (state !== 'loose') ways[i] = Math.sign(gain) * ways[before]!;
      continue;
    }
    const cable = context.cableOf[i];
    if (cable === undefined) continue;
    const joint = cables[cable]!;
    const opens = Math.sign(build.mechanism.senses[root]! * context.lines.cables[cable]!.pulls);
    // A cable at its dead centre moves nothing; what it pulls can still come back.
    ways[i] = (cableWay(context, joint) || 1) * (opens || 1);
  }
}

function atFoot({ mechanism, parameters }: Build, { pad, tension }: Pass): number {
  const { drive, attached } = mechanism;
  if (drive.kind === 'lever') return pad;
  const joint = mechanism.joints[drive.joint]!;
  const pull = joint.kind === 'cable' ? tension[joint.cable]! : NaN;
  return attached.pad?.kind === 'cable' && attached.pad.ratio !== undefined ? pull / parameters[attached.pad.ratio]! : pull;
}

function fillMargins({ motion, ways, joinedTo }: PassContext, { frictionless, pressing, releasing, margin }: FrictionStatics): void {
  const { bodies, bodyOf } = motion;
  for (let lever = 0; lever < margin.length; lever++) {
    const body = bodyOf[lever]!;
    if (body < 0) {
      margin[lever] = NaN;
      continue;
    }
    const first = joinedTo[body]!;
    const closing = ways[first]! < 0 ? pressing : releasing;
    const torque = frictionless.closing[bodies[first]!.root]!;
    margin[lever] = closing.jammed[first]! > 0 ? 0 : marginOf(torque, closing.net[first]!);
  }
}
