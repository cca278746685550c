/**
 * What turns each body, by free bodies with d'Alembert's forces: −I α on each lever and, of a slender rod of mass m whose ends move with
 * P̈₁ and P̈₂, −m (P̈₁/3 + P̈₂/6) and −m (P̈₁/6 + P̈₂/3) on its pins. The force analysis (`friction/pass.ts`) then tells what is left over at
 * each body's first lever: its motion is that for which nothing is.
 *
 * Forces across gaps that are shut are put in from outside, so that each body stands alone. A cable's tension changes over its housing by
 * the capstan equation, the way its inner slides.
 */
import type { Build } from '../../kinematics/build.ts';
import type { RodJoint } from '../../kinematics/model.ts';
import { unheld } from '../friction/holding.ts';
import { createGrip, gripPin } from '../friction/line.ts';
import { createLines, fillLines, type CableLine } from '../friction/lines.ts';
import { createLoads, fillLoads, type Loads } from '../friction/loads.ts';
import { createPass, goThrough, type PassContext } from '../friction/pass.ts';
import { springTorques } from '../springs.ts';
import { createBodies, type Bodies } from './bodies.ts';
import { createPinMotion, fillPin, gapAt, type Gap, type GapState, type Moving } from './gaps.ts';
import type { Inertias } from './inertia.ts';

/** A cable that an open stop stretches: what it pulls at the pedal's end, N, is `held` + `stiffness` times the overlap of its gap. */
export interface Stretched {
  readonly gap: number;
  readonly held: number;
  /** N/m. */
  readonly stiffness: number;
}

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
  const between = gaps.map((gap) => bodiesBetween(gap, bodyOf, pedal));
  const rods = mechanism.joints.filter((joint): joint is RodJoint => joint.kind === 'rod' && inertias.rods[joint.index]! > 0);
  const speeds = new Float64Array(count);
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
      for (const rod of rods) addRod(rod);
      let drawn = 0;
      for (let k = 0; k < gaps.length; k++) {
        if (pressing[k] === 0) continue;
        drawn += press(gaps[k]!, pressing[k]!);
        // What stays shut takes nothing; where it gives way by rounding, that is no friction.
        gapAt(moving, gaps[k]!, scratch);
        rubbed.power += pressing[k]! * scratch.rate;
      }
      for (const each of dynamics.stretched) drawn += drawBack(each);
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
      for (const { driver, driven, driverPin, drivenPin, index } of rods) {
        const mass = inertias.rods[index]!;
        fillPin(build, pose, driver, driverPin, pose.rate[driver]!, 0, first);
        fillPin(build, pose, driven, drivenPin, pose.rate[driven]!, 0, second);
        const from = bodyOf[driver]!;
        const to = bodyOf[driven]!;
        if (from === to)
          into[from] =
            into[from]! + (mass / 3) * (dot(first.speed, first.speed) + dot(first.speed, second.speed) + dot(second.speed, second.speed));
        else {
          into[from] = into[from]! + (mass / 2) * dot(first.speed, first.speed);
          into[to] = into[to]! + (mass / 2) * dot(second.speed, second.speed);
        }
      }
      if (pedal !== undefined) into[pedal] = inertias.pedal;
    },
    slope(gap, body) {
      const kept = Float64Array.from(moving.speed);
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

  function addRod({ driver, driven, driverPin, drivenPin, index }: RodJoint): void {
    const mass = inertias.rods[index]!;
    const { speed, acceleration } = moving;
    fillPin(build, pose, driver, driverPin, speed[driver]!, acceleration[driver]!, first);
    fillPin(build, pose, driven, drivenPin, speed[driven]!, acceleration[driven]!, second);
    // A rod that hangs between two bodies is put half on each: how it turns between them is left out.
    const [near, far] = bodyOf[driver] === bodyOf[driven] ? [mass / 3, mass / 6] : [mass / 2, 0];
    gripPin(build.parameters, driverPin, pose.cosine[driver]!, pose.sine[driver]!, grip);
    addInertia(driver, near, far, first.acceleration, second.acceleration, first.speed);
    gripPin(build.parameters, drivenPin, pose.cosine[driven]!, pose.sine[driven]!, grip);
    addInertia(driven, near, far, second.acceleration, first.acceleration, second.speed);
  }

  /** On the pin in `grip`. */
  function addInertia(lever: number, near: number, far: number, own: Float64Array, others: Float64Array, speed: Float64Array): void {
    const x = -(near * own[0]! + far * others[0]!);
    const y = -(near * own[1]! + far * others[1]!);
    const z = -(near * own[2]! + far * others[2]!);
    addForce(lever, x, y, z, x * grip.tx + y * grip.ty + z * grip.tz);
    rubbed.power += x * speed[0]! + y * speed[1]! + z * speed[2]!;
  }

  function addForce(lever: number, x: number, y: number, z: number, moment: number): void {
    loads.moment[lever] = loads.moment[lever]! + moment;
    loads.x[lever] = loads.x[lever]! + x;
    loads.y[lever] = loads.y[lever]! + y;
    loads.z[lever] = loads.z[lever]! + z;
  }

  /** @returns what draws a pedal back that is only a cable */
  function press(gap: Gap, force: number): number {
    switch (gap.kind) {
      case 'stop':
        addForce(gap.lever, 0, 0, 0, (gap.which === 'closed' ? 1 : -1) * mechanism.senses[gap.lever]! * force);
        return 0;
      case 'pedal-stop':
        return -force;
      case 'cable': {
        const { joint } = gap;
        const line = lines.cables[joint.cable]!;
        pull(joint.driven, line.driven, line.pulls, force);
        const way = slides(joint.driver, joint.driven, line);
        const before = way > 0 ? force * line.ratio : way < 0 ? force / line.ratio : force;
        if (joint.driver === undefined) return before;
        pull(joint.driver, line.driving, line.draws, before);
        return 0;
      }
      case 'seized': {
        const line = lines.cables[gap.joint.cable]!;
        if (gap.end === 'driven') pull(gap.joint.driven, line.driven, line.pulls, force);
        else pull(gap.joint.driver!, line.driving, line.draws, force);
        return 0;
      }
      case 'play': {
        const { driven, driver, index } = gap.joint;
        const line = lines.joints[index]!;
        const way = ways[bodyOf[driver]!]!;
        const x = force * (gap.side * line.gx + way * line.hx);
        const y = force * (gap.side * line.gy + way * line.hy);
        const z = force * (gap.side * line.gz + way * line.hz);
        addForce(driven, x, y, z, force * (gap.side * line.arm + way * line.armFriction));
        addForce(driver, -x, -y, -z, force * (gap.side * line.back + way * line.backFriction));
        return 0;
      }
    }
  }

  function pull(lever: number, way: CableLine['driven'], arm: number, force: number): void {
    addForce(lever, force * way.x, force * way.y, force * way.z, force * arm);
  }

  /** +1 where an inner slides towards the pedal. */
  function slides(driver: number | undefined, driven: number, line: CableLine): number {
    const before =
      driver === undefined
        ? ways[pedal!]!
        : Math.sign(-mechanism.senses[driver]! * line.draws * motion.unit[driver]!) * ways[bodyOf[driver]!]!;
    if (before !== 0) return before;
    return Math.sign(mechanism.senses[driven]! * line.pulls * motion.unit[driven]!) * ways[bodyOf[driven]!]!;
  }

  function drawBack({ gap: index, held, stiffness }: Stretched): number {
    const gap = gaps[index]!;
    if (gap.kind !== 'cable') return 0;
    const { joint } = gap;
    const line = lines.cables[joint.cable]!;
    gapAt(moving, gap, scratch);
    const tension = held + stiffness * Math.max(0, -scratch.g);
    // The inner runs back as the pedal does.
    const before = tension / line.ratio;
    rubbed.power += tension * scratch.rate;
    if (joint.driver === undefined) return before;
    pull(joint.driver, line.driving, line.draws, before);
    return 0;
  }

  function freeLever(lever: number): Parameters<typeof unheld>[0] {
    const way = mechanism.senses[lever]! * ways[bodyOf[lever]!]!;
    const { moment, x, y, z, drag, radius } = loads;
    return { moment: moment[lever]!, x: x[lever]!, y: y[lever]!, z: z[lever]!, drag: drag[lever]!, radius: radius[lever]!, way };
  }
}

function bodiesBetween(gap: Gap, bodyOf: readonly number[], pedal: number | undefined): readonly [number, number] {
  switch (gap.kind) {
    case 'stop':
      return [bodyOf[gap.lever]!, -1];
    case 'pedal-stop':
      return [pedal!, -1];
    case 'cable':
      return [bodyOf[gap.joint.driven]!, gap.joint.driver === undefined ? pedal! : bodyOf[gap.joint.driver]!];
    case 'seized':
      return [gap.end === 'driven' ? bodyOf[gap.joint.driven]! : bodyOf[gap.joint.driver!]!, -1];
    case 'play':
      return [bodyOf[gap.joint.driven]!, bodyOf[gap.joint.driver]!];
  }
}

function isLinear({ mechanism: { friction, joints }, parameters: p }: Build): boolean {
  const none = (parameter: number | undefined): boolean => parameter === undefined || p[parameter] === 0;
  return (
    friction.levers.every(({ bearing }) => bearing === undefined || none(bearing.friction)) &&
    joints.every(({ kind, index }) => kind === 'cable' || none(friction.joints[index]!.coefficient))
  );
}

function dot(a: Float64Array, b: Float64Array): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}

const first = createPinMotion();
const second = createPinMotion();
const grip = createGrip();
const scratch: GapState = { g: 0, rate: 0, change: 0 };
