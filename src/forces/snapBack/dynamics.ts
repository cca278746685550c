/**
 * What turns each body, by free bodies with d'Alembert's forces: −I α on each lever, those of the rods (`rodMass.ts`), and what presses
 * across gaps that are shut (`pressing.ts`). The force analysis (`friction/pass.ts`) then tells what is left over at each body's first
 * lever: its motion is that for which nothing is.
 */
import type { Build } from '../../kinematics/build.ts';
import { unheld } from '../friction/holding.ts';
import { createLines, fillLines } from '../friction/lines.ts';
import { createLoads, fillLoads, type Loads } from '../friction/loads.ts';
import { createPass, goThrough, type PassContext } from '../friction/pass.ts';
import { springTorques } from '../springs.ts';
import type { Acting } from './acting.ts';
import { createBodies, type Bodies } from './bodies.ts';
import { gapAt, type Gap, type GapState, type Moving } from './gaps.ts';
import type { Inertias } from './inertia.ts';
import { bodiesBetween, createPressing, type Stretched } from './pressing.ts';
import { createRodMass } from './rodMass.ts';

export interface Dynamics {
  readonly bodies: Bodies;
  readonly gaps: readonly Gap[];
  /** The two bodies of each gap, the driven one first; −1 for none. */
  readonly between: readonly (readonly [driven: number, driver: number])[];
  /** How it moves; filled by `place` and `move`. */
  readonly moving: Moving;
  /** By body: +1 opening, −1 closing or about to, 0 where it stands. Of those that stand still nothing rubs. */
  readonly ways: Int8Array;
  /** Whether what is left over is linear in accelerations and pressing forces: no friction depends on a load but that of cables. */
  readonly isLinear: boolean;
  /** Cables that are stretched. */
  readonly stretched: Stretched[];
  /** Puts all bodies where they are, with their speeds. @returns false where they cannot be assembled, or a spring is not known */
  place(q: Float64Array, v: Float64Array): boolean;
  /** Puts in accelerations of the bodies, for gaps. */
  accelerate(a: Float64Array): void;
  /**
   * Closing torque that is left over of each body (a force for a pedal that is a cable); NaN where a joint jams. Where nothing jams the body
   * moves so that none is.
   * @param pressing force across each gap, N or N·m, never negative
   */
  leftOver(a: Float64Array, pressing: Float64Array, into: Float64Array): void;
  /** What friction takes after a call of `leftOver`, W. */
  readonly rubbed: { power: number };
  /** Inertia of each body for its coordinate. */
  fillMasses(into: Float64Array): void;
  /** ∂g/∂q of a gap by one body. */
  slope(gap: number, body: number): number;
  gapState(gap: number, into: GapState): void;
  /** Of the force across a gap, how much comes to the driving body, with these speeds: other than all of it in the housing of a cable. */
  passes(gap: number, v: Float64Array): number;
}

/** @param build without the springs that are lost; @param isLost by the name of a joint */
export function createDynamics(
  build: Build,
  isLost: (name: string) => boolean,
  inertias: Inertias,
  gapsOf: (bodies: Bodies) => readonly Gap[],
): Dynamics {
  const { mechanism } = build;
  const bodies = createBodies(build, ({ name }) => isLost(name));
  const { pose, motion, bodyOf, pedal, count } = bodies;
  const levers = mechanism.levers.length;
  const gaps = gapsOf(bodies);
  const base = createLoads(build);
  const loads: Loads = {
    ...base,
    moment: new Float64Array(levers),
    x: new Float64Array(levers),
    y: new Float64Array(levers),
    z: new Float64Array(levers),
  };
  const carried = createLoads(build);
  const lines = createLines(build);
  const pass = createPass(build, motion.bodies.length);
  const isLoaded = mechanism.friction.levers.map(({ bearing }) => bearing !== undefined);
  const springs = new Float64Array(levers);
  const ways = new Int8Array(count);
  const rubbed = { power: 0 };
  const context: PassContext = { build, motion, lines, loads, ways, joinedTo: Int32Array.from({ length: count }, (_, i) => i) };
  const moving: Moving = {
    build,
    pose,
    speed: new Float64Array(levers),
    acceleration: new Float64Array(levers),
    pedal: { q: 0, v: 0, a: 0 },
  };
  const acting: Acting = { build, bodies, moving, lines, loads, ways, rubbed };
  const between = gaps.map((gap) => bodiesBetween(gap, bodies));
  const pressed = createPressing(acting);
  const rods = createRodMass(acting, inertias.rods);
  const speeds = new Float64Array(count);
  const kept = new Float64Array(levers);
  const alone = motion.bodies.flatMap(({ root, driver }, i) =>
    driver === undefined && mechanism.levers[root]!.group < 0 ? [{ body: i, lever: root }] : [],
  );

  const dynamics: Dynamics = {
    bodies,
    gaps,
    between,
    moving,
    ways,
    isLinear: isLinear(build),
    stretched: [],
    rubbed,
    place(q, v) {
      bodies.place(q);
      speeds.set(v);
      let known = true;
      for (let lever = 0; lever < levers; lever++) {
        moving.speed[lever] = pose.rate[lever]! * v[bodyOf[lever]!]!;
        springs[lever] = 0;
        known &&= Number.isFinite(moving.speed[lever]) && Number.isFinite(pose.rotation[lever]!) && Number.isFinite(pose.curvature[lever]!);
      }
      if (pedal !== undefined) {
        moving.pedal.q = q[pedal]!;
        moving.pedal.v = v[pedal]!;
      }
      if (!known) return false;
      for (const spring of mechanism.attached.springs) {
        for (const { lever, closing } of springTorques(build, pose, spring)) springs[lever] = springs[lever]! + closing;
      }
      for (let lever = 0; lever < levers; lever++) known &&= !Number.isNaN(springs[lever]!);
      motion.bodies.forEach(({ driver }, body) => {
        const before = driver?.driver === undefined ? 0 : v[bodyOf[driver.driver]!]!;
        motion.links[body]!.gain = before === 0 ? 0 : v[body]! / before;
      });
      fillLines(build, pose, motion, isLoaded, lines);
      fillLoads(build, pose, springs, undefined, base);
      return known;
    },
    accelerate(a) {
      for (let lever = 0; lever < levers; lever++) {
        const body = bodyOf[lever]!;
        moving.acceleration[lever] = pose.rate[lever]! * a[body]! + pose.curvature[lever]! * speeds[body]! * speeds[body]!;
      }
      if (pedal !== undefined) moving.pedal.a = a[pedal]!;
    },
    leftOver(a, pressing, into) {
      dynamics.accelerate(a);
      rubbed.power = 0;
      for (let lever = 0; lever < levers; lever++) {
        const moment = base.moment[lever]! - inertias.levers[lever]! * moving.acceleration[lever]!;
        loads.moment[lever] = moment;
        loads.x[lever] = base.x[lever]!;
        loads.y[lever] = base.y[lever]!;
        loads.z[lever] = base.z[lever]!;
        rubbed.power += moment * moving.speed[lever]!;
      }
      rods.act();
      let drawn = 0;
      for (let k = 0; k < gaps.length; k++) {
        if (pressing[k] === 0) continue;
        drawn += pressed.press(gaps[k]!, pressing[k]!);
        // What stays shut takes nothing; where it gives way by rounding, that is no friction.
        gapAt(moving, gaps[k]!, scratch);
        rubbed.power += pressing[k]! * scratch.rate;
      }
      for (const each of dynamics.stretched) drawn += pressed.drawBack(gaps[each.gap]!, each);
      goThrough(context, pose, 1, carried, pass);
      for (let body = 0; body < motion.bodies.length; body++) into[body] = pass.net[body]!;
      for (const { body, lever } of alone) into[body] = -mechanism.senses[lever]! * unheld(freeLever(lever));
      if (pedal !== undefined) {
        into[pedal] = drawn + inertias.pedal * a[pedal]!;
        rubbed.power -= inertias.pedal * a[pedal]! * speeds[pedal]!;
      }
    },
    fillMasses(into) {
      into.fill(0);
      for (let lever = 0; lever < levers; lever++) {
        const body = bodyOf[lever]!;
        into[body] = into[body]! + inertias.levers[lever]! * pose.rate[lever]! ** 2;
      }
      rods.addTo(into);
      if (pedal !== undefined) into[pedal] = inertias.pedal;
    },
    slope(gap, body) {
      kept.set(moving.speed);
      const pedalSpeed = moving.pedal.v;
      for (let lever = 0; lever < levers; lever++) moving.speed[lever] = bodyOf[lever] === body ? pose.rate[lever]! : 0;
      moving.pedal.v = body === pedal ? 1 : 0;
      gapAt(moving, gaps[gap]!, scratch);
      moving.speed.set(kept);
      moving.pedal.v = pedalSpeed;
      return scratch.rate;
    },
    gapState(gap, into) {
      gapAt(moving, gaps[gap]!, into);
    },
    passes(k, v) {
      const gap = gaps[k]!;
      if (gap.kind !== 'cable') return 1;
      const [driven, driver] = between[k]!;
      // The gap widens at the driving end as the inner runs back to the engine.
      const runsBack = dynamics.slope(k, driver) * v[driver]! || -dynamics.slope(k, driven) * v[driven]!;
      const { ratio } = lines.cables[gap.joint.cable]!;
      return runsBack > 0 ? 1 / ratio : runsBack < 0 ? ratio : 1;
    },
  };
  return dynamics;

  function freeLever(lever: number): Parameters<typeof unheld>[0] {
    const way = mechanism.senses[lever]! * ways[bodyOf[lever]!]!;
    const { moment, x, y, z, drag, radius } = loads;
    return { moment: moment[lever]!, x: x[lever]!, y: y[lever]!, z: z[lever]!, drag: drag[lever]!, radius: radius[lever]!, way };
  }
}

function isLinear({ mechanism: { friction, joints }, parameters: p }: Build): boolean {
  const none = (parameter: number | undefined): boolean => parameter === undefined || p[parameter] === 0;
  return (
    friction.levers.every(({ bearing }) => bearing === undefined || none(bearing.friction)) &&
    joints.every(({ kind, index }) => kind === 'cable' || none(friction.joints[index]!.coefficient))
  );
}

const scratch: GapState = { g: 0, rate: 0, change: 0 };
