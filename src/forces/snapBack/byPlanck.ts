/**
 * Snap-back of a planar linkage by planck: levers on revolute joints, rods as bodies between two more, slots as a pin on a line, couplings
 * as gears, gaps as joints that only press (`oneSided.ts`), springs as forces, friction as motors that hold with no more than what the
 * joint carries allows. A second way beside `solveMotion.ts`, which shares nothing with it but geometry of gaps and the forces of springs.
 *
 * planck is made for things of about its unit and lets joints be off by 0.005 of it: 10 mm are one unit here, so that is 0.05 mm. Below 1
 * unit a second, 10 mm/s, its contacts do not bounce; none is used.
 */
import type { Body } from 'planck';
import { loadPlanck, type Planck } from '../../numeric/planck.ts';
import type { Build } from '../../kinematics/build.ts';
import type { RodJoint, SlotJoint } from '../../kinematics/model.ts';
import { hasPlay } from '../../kinematics/rest.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { capstanRatio } from '../friction/capstan.ts';
import { frictionRadius } from '../friction/circle.ts';
import { plateLoad } from '../friction/plateLoad.ts';
import { springSpan, springTension } from '../springs.ts';
import { rateOf } from '../wire/rate.ts';
import { gapAt, type Gap, type GapState, type Moving } from './gaps.ts';
import { gapsOf } from './gapsOf.ts';
import { addOneSided, type GapNow, type OneSided } from './oneSided.ts';
import { createPlateTimes } from './plateTimes.ts';
import { prepare } from './prepare.ts';
import { createRecorder } from './recorder.ts';
import type { Assumption } from './assumed.ts';
import { createDynamics, type Stretched } from './dynamics.ts';
import { springEnergy } from './springEnergy.ts';
import { startStretched, stretchEnergy } from './stretched.ts';
import { summed } from './summed.ts';
import type { NotComputed, SnapBack, SnapBackOptions } from './snapBack.ts';

type Revolute = InstanceType<Planck['RevoluteJoint']>;
type Vec2 = InstanceType<Planck['Vec2']>;

/** Units of planck's in a metre. */
const UNITS = 100;
/** s. */
const STEP = 2e-5;
/** Turns of its solver a step. */
const VELOCITY_TURNS = 30;
const POSITION_TURNS = 6;
/** s between two records. */
const RECORD = 5e-4;
/** J: all that moves has less when it counts as come to rest, of what the springs have given out. */
const AT_REST = 1e-7;
/** s without motion until it is over. */
const CALM = 0.01;
/** Relative to the fastest so far; a bounce slower than this is none: what rests on a stop is pressed on it anew each step. */
const LEAST_BOUNCE = 0.02;
/** m; stands for the arm of what carries a body's mass, where it has none. */
const USUAL_ARM = 0.03;

/** Whether all levers turn about z, which planck asks for. */
export function isPlanar({ mechanism, parameters: p }: Build): boolean {
  return mechanism.levers.every(({ axis }) => Math.abs(Math.abs(p[axis + 2]!) - 1) <= PARALLEL);
}

const PARALLEL = 1e-9;

export function snapBackByPlanck(build: Build, options: SnapBackOptions): SnapBack | NotComputed {
  if (!isPlanar(build)) return { method: undefined, reason: 'a linkage that leaves its plane goes by the equation of motion alone' };
  const prepared = prepare(build, options);
  if ('reason' in prepared) return prepared;
  const { bare, start, isLost, isSeized, inertias, restitution, horizon } = prepared;
  const { mechanism, parameters: p } = bare;
  const planck = loadPlanck();
  const step = options.step ?? STEP;
  const world = new planck.World({ gravity: new planck.Vec2(0, 0), allowSleep: false, continuousPhysics: false });
  const ground = world.createBody();
  const pose = createPose(mechanism);
  const sign = mechanism.levers.map(({ axis }) => Math.sign(p[axis + 2]!));
  const levers = mechanism.levers.map(({ index, pivot, pins }) => {
    const arm = Math.max(0, ...[...pins.values()].map((pin) => Math.hypot(p[pin + 3]!, p[pin + 4]!)));
    const body = world.createBody({
      type: 'dynamic',
      position: new planck.Vec2(p[pivot]! * UNITS, p[pivot + 1]! * UNITS),
      angle: sign[index]! * start.rotation[index]!,
    });
    const inertia = inertias.levers[index]!;
    weigh(body, inertia / (arm > 0 ? arm : USUAL_ARM) ** 2, inertia);
    return body;
  });
  // planck takes an angle at first within half a turn.
  const turns = levers.map((body, index) => start.rotation[index]! - sign[index]! * body.getAngle());
  const bearings = levers.map((body, index) =>
    world.createJoint(new planck.RevoluteJoint({ enableMotor: true, motorSpeed: 0 }, ground, body, levers[index]!.getPosition()))!,
  );
  // A pedal that is only a cable: a body that turns by one radian for one metre of pull.
  const pedal = mechanism.drive.kind === 'cable' ? world.createBody({ type: 'dynamic' }) : undefined;
  if (pedal !== undefined && mechanism.drive.kind === 'cable') {
    weigh(pedal, inertias.pedal, inertias.pedal);
    pedal.setTransform(pedal.getPosition(), p[mechanism.drive.travel]! * start.travel);
    world.createJoint(new planck.RevoluteJoint({}, ground, pedal, pedal.getPosition()));
  }
  const rods: { readonly body: Body; readonly mass: number; readonly inertia: number }[] = [];
  const rubbing: (() => void)[] = [];
  const motors: Revolute[] = [...bearings];
  for (const joint of mechanism.joints) {
    if (isLost(joint.name) || hasPlay(joint)) continue;
    if (joint.kind === 'rod') addRod(joint);
    if (joint.kind === 'slot') addSlot(joint);
    if (joint.kind === 'coupling') {
      const ratio = -p[joint.ratio]! * sign[joint.driver]! * sign[joint.driven]!;
      world.createJoint(
        new planck.GearJoint({}, levers[joint.driven]!, levers[joint.driver]!, bearings[joint.driven]!, bearings[joint.driver]!, ratio),
      );
    }
  }
  bearings.forEach((bearing, lever) => rubbing.push(bearingFriction(bearing, lever)));

  const moving: Moving = {
    build: bare,
    pose,
    speed: new Float64Array(levers.length),
    acceleration: new Float64Array(levers.length),
    pedal: { q: 0, v: 0, a: 0 },
  };
  const state: GapState = { g: 0, rate: 0, change: 0 };
  let fastest = 0;
  const allGaps = gapsOf(bare, start, isLost, isSeized);
  const stretched = stretchedOf();
  const gaps = allGaps.map((gap, k) => ({ gap, joint: addGap(gap, k) }));

  readPose();
  const plates = createPlateTimes(bare, pose);
  const recorder = createRecorder(levers.length);
  recorder.add(0, pose);
  const held = springEnergy(bare, pose) + stretched.energy;
  let time = 0;
  let friction = 0;
  let calm = 0;
  const before = new Float64Array(mechanism.attached.plates.length);
  let recorded = 0;
  while (time < horizon && calm < CALM) {
    pullBySprings();
    for (const each of rubbing) each();
    pullByStretched();
    mechanism.attached.plates.forEach((_, i) => (before[i] = plates.distance(i, pose)));
    world.step(step, VELOCITY_TURNS, POSITION_TURNS);
    for (const motor of motors) friction += (Math.abs(motor.getMotorTorque(1 / step) * motor.getJointSpeed()) * step) / UNITS ** 2;
    time += step;
    readPose();
    for (const { gap, joint } of gaps) {
      const met = joint.met();
      if (met === undefined || gap.kind !== 'stop' || gap.which !== 'closed' || !(met.approach > LEAST_BOUNCE * fastest)) continue;
      plates.meets(gap.lever, met.approach, met.leaving > LEAST_BOUNCE * fastest);
    }
    plates.step(time, pose, (plate) => {
      const after = plates.distance(plate, pose);
      return time - step + step * (before[plate]! / (before[plate]! - after));
    });
    if (time - recorded >= RECORD) {
      recorder.add(time, pose);
      recorded = time;
    }
    const kinetic = kineticEnergy();
    if (Number.isNaN(kinetic)) return { method: undefined, reason: 'planck does not hold the linkage together' };
    calm = kinetic <= AT_REST * Math.max(Math.abs(held - springEnergy(bare, pose)), AT_REST) ? calm + step : 0;
  }
  recorder.add(time, pose);
  const kinetic = kineticEnergy();
  const returns = plates.answer(pose, () => (calm < CALM ? 'still-moving' : 'sticks'));
  const springs = held - springEnergy(bare, pose);
  let stops = 0;
  let jerks = 0;
  for (const { gap, joint } of gaps) {
    friction += joint.rubbed() / UNITS ** 2;
    if (gap.kind === 'stop' || gap.kind === 'pedal-stop') stops += joint.taken() / UNITS ** 2;
    else jerks += joint.taken() / UNITS ** 2;
  }
  return {
    method: 'planck',
    ...summed(returns),
    energy: { springs, kinetic, friction, stops, jerks, residual: springs - kinetic - friction - stops - jerks },
    assumed: [...prepared.assumed, ...stretched.assumed],
    trace: recorder.trace(),
    followed: time,
  };

  function weigh(body: Body, mass: number, inertia: number): void {
    body.setMassData({ mass, center: new planck.Vec2(0, 0), I: inertia * UNITS ** 2 });
  }

  /** Where a pin stands now, in planck's units. */
  function pinAt(lever: number, pin: number, at: Pose): Vec2 {
    const c = at.cosine[lever]!;
    const s = at.sine[lever]!;
    const along = (axis: number): number => (p[pin + axis]! + c * p[pin + 3 + axis]! + s * p[pin + 6 + axis]!) * UNITS;
    return new planck.Vec2(along(0), along(1));
  }

  function addRod({ driver, driven, driverPin, drivenPin, index }: RodJoint): void {
    const [first, second] = [pinAt(driver, driverPin, start), pinAt(driven, drivenPin, start)];
    const body = world.createBody({ type: 'dynamic', position: new planck.Vec2((first.x + second.x) / 2, (first.y + second.y) / 2) });
    const mass = inertias.rods[index]!;
    const length = Math.hypot(second.x - first.x, second.y - first.y) / UNITS;
    const inertia = (mass * length * length) / 12;
    weigh(body, mass, inertia);
    rods.push({ body, mass, inertia });
    const { coefficient, pin } = mechanism.friction.joints[index]!;
    const radius = coefficient === undefined || pin === undefined ? 0 : frictionRadius(p[pin]!, p[coefficient]!) * UNITS;
    for (const [lever, at] of [
      [driver, first],
      [driven, second],
    ] as const) {
      const joint = world.createJoint(new planck.RevoluteJoint({ enableMotor: radius > 0, motorSpeed: 0 }, levers[lever]!, body, at))!;
      if (radius === 0) continue;
      motors.push(joint);
      rubbing.push(() => joint.setMaxMotorTorque(radius * joint.getReactionForce(1 / step).length()));
    }
  }

  function addSlot({ pinLever, fork, pin, direction, normal, forkPivot, offset, index }: SlotJoint): void {
    const [forked, pinned] = [levers[fork]!, levers[pinLever]!];
    const along = new planck.Vec2(p[direction]!, p[direction + 1]!);
    const from = new planck.Vec2(
      (p[forkPivot]! + p[offset]! * p[normal]!) * UNITS,
      (p[forkPivot + 1]! + p[offset]! * p[normal + 1]!) * UNITS,
    );
    const drawn = (body: Body, x: number, y: number): Vec2 => new planck.Vec2(x - body.getPosition().x, y - body.getPosition().y);
    const joint = world.createJoint(
      new planck.WheelJoint({
        bodyA: forked,
        bodyB: pinned,
        localAnchorA: drawn(forked, from.x, from.y),
        localAnchorB: drawn(pinned, (p[pin]! + p[pin + 3]!) * UNITS, (p[pin + 1]! + p[pin + 4]!) * UNITS),
        localAxisA: along,
        // Its spring is as good as none; with none at all planck forgets to set what it reckons with.
        frequencyHz: 1e-6,
        dampingRatio: 0,
        enableMotor: false,
      }),
    )!;
    const coefficient = mechanism.friction.joints[index]!.coefficient;
    if (coefficient === undefined || p[coefficient] === 0) return;
    rubbing.push(() => {
      const at = joint.getAnchorB();
      const axis = forked.getWorldVector(along);
      const [one, other] = [pinned.getLinearVelocityFromWorldPoint(at), forked.getLinearVelocityFromWorldPoint(at)];
      const speed = (one.x - other.x) * axis.x + (one.y - other.y) * axis.y;
      const force = p[coefficient]! * joint.getReactionForce(1 / step).length();
      const rub = (-force * speed) / (Math.abs(speed) + SLIDES);
      pinned.applyForce({ x: rub * axis.x, y: rub * axis.y }, at);
      forked.applyForce({ x: -rub * axis.x, y: -rub * axis.y }, at);
      friction += (Math.abs(rub * speed) * step) / UNITS ** 2;
    });
  }

  function bearingFriction(bearing: Revolute, lever: number): () => void {
    const { bearing: bush, drag } = mechanism.friction.levers[lever]!;
    const constant = drag === undefined ? 0 : p[drag]!;
    const radius = bush === undefined ? 0 : frictionRadius(p[bush.diameter]!, p[bush.friction]!);
    const all = mechanism.attached.plates;
    return () => {
      let pressed = 0;
      if (radius > 0)
        all.forEach((each, i) => (pressed += each.lever === lever ? plateLoad(bare, pose, each, mechanism.friction.vacuum[i]) : 0));
      const carried = radius === 0 ? 0 : bearing.getReactionForce(1 / step).length() / UNITS;
      bearing.setMaxMotorTorque((constant + radius * (carried + pressed)) * UNITS ** 2);
    };
  }

  /** Cables that are stretched: what they hold stands fast until they are not. */
  function stretchedOf(): { readonly each: Map<number, Stretched>; readonly energy: number; readonly assumed: readonly Assumption[] } {
    const dynamics = createDynamics(bare, isLost, inertias, () => allGaps);
    const q = Float64Array.from(dynamics.bodies.bodies, ({ root }) => mechanism.senses[root]! * start.rotation[root]!);
    const all = new Float64Array(dynamics.bodies.count);
    all.set(q);
    if (pedal !== undefined) all[q.length] = pedal.getAngle();
    dynamics.place(all, new Float64Array(all.length));
    const told = startStretched(dynamics, start, [], []);
    return { each: new Map(dynamics.stretched.map((each) => [each.gap, each])), energy: stretchEnergy(dynamics), assumed: told };
  }

  function pullByStretched(): void {
    for (const [k, { held: holding, stiffness }] of stretched.each) {
      const gap = allGaps[k]!;
      if (gap.kind !== 'cable') continue;
      gapAt(moving, gap, state);
      if (state.g >= 0) {
        stretched.each.delete(k);
        continue;
      }
      bearings[gap.joint.driven]!.setMaxMotorTorque(FAST);
      const { driver, index } = gap.joint;
      const ratio = housingRatio(index);
      const torque = ((holding - stiffness * state.g) / ratio) * slope(gap, driver ?? PEDAL) * UNITS ** 2;
      if (driver === undefined) pedal!.applyTorque(torque);
      else levers[driver]!.applyTorque(sign[driver]! * torque);
    }
  }

  function addGap(gap: Gap, k: number): OneSided {
    const [driven, driver] = leversOf(gap);
    const bodyOf = (lever: number): Body => (lever === PEDAL ? pedal! : lever < 0 ? ground : levers[lever]!);
    const ratio = gap.kind === 'cable' ? housingRatio(gap.joint.index) : 1;
    const read = (into: GapNow): void => {
      gapAt(moving, gap, state);
      // Of a gap, m or rad: all that matters of its unit is that its slopes have the same.
      into.g = stretched.each.has(k) ? Infinity : state.g;
      into.first = slope(gap, driven) * (driven === PEDAL ? 1 : sign[driven]!);
      into.second = driver === NONE ? 0 : slope(gap, driver) * (driver === PEDAL ? 1 : sign[driver]!);
      const slides = into.second * bodyOf(driver).getAngularVelocity();
      // The gap widens at the driving end as the inner runs back.
      into.passes = slides > 0 ? 1 / ratio : slides < 0 ? ratio : 1;
    };
    const isStop = gap.kind === 'stop' || gap.kind === 'pedal-stop';
    const bounce = (approach: number): number => (isStop && restitution * approach > LEAST_BOUNCE * fastest ? restitution : 0);
    return addOneSided(planck, (joint) => void world.createJoint(joint), bodyOf(driven), bodyOf(driver), read, bounce);
  }

  function slope(gap: Gap, lever: number): number {
    moving.speed.fill(0);
    moving.pedal.v = 0;
    if (lever === PEDAL) moving.pedal.v = 1;
    else moving.speed[lever] = 1;
    gapAt(moving, gap, scratch);
    return scratch.rate;
  }

  function housingRatio(index: number): number {
    const { coefficient, bend } = mechanism.friction.joints[index]!;
    return coefficient === undefined || bend === undefined ? 1 : capstanRatio(p[coefficient]!, p[bend]!);
  }

  function readPose(): void {
    levers.forEach((body, lever) => {
      const rotation = turns[lever]! + sign[lever]! * body.getAngle();
      pose.rotation[lever] = rotation;
      pose.cosine[lever] = Math.cos(rotation);
      pose.sine[lever] = Math.sin(rotation);
      fastest = Math.max(fastest, Math.abs(body.getAngularVelocity()));
    });
    moving.pedal.q = pedal?.getAngle() ?? 0;
  }

  function pullBySprings(): void {
    for (const spring of mechanism.attached.springs) {
      const { lever } = spring;
      if (spring.kind === 'torsion') {
        const opening = mechanism.senses[lever]! * pose.rotation[lever]!;
        const closing = p[spring.preload]! + rateOf(bare, spring) * opening;
        levers[lever]!.applyTorque(-sign[lever]! * mechanism.senses[lever]! * closing * UNITS ** 2);
        continue;
      }
      const tension = springTension(bare, pose, spring);
      if (tension === 0) continue;
      const { e, length } = springSpan(bare, pose, spring);
      const [x, y] = [(tension * e[0] * UNITS) / length, (tension * e[1] * UNITS) / length];
      levers[lever]!.applyForce({ x: -x, y: -y }, pinAt(lever, spring.to, pose));
      if (spring.from.kind === 'pin') levers[spring.from.lever]!.applyForce({ x, y }, pinAt(spring.from.lever, spring.from.pin, pose));
    }
  }

  function kineticEnergy(): number {
    let sum = 0;
    levers.forEach((body, lever) => (sum += (inertias.levers[lever]! * body.getAngularVelocity() ** 2) / 2));
    if (pedal !== undefined) sum += (inertias.pedal * pedal.getAngularVelocity() ** 2) / 2;
    for (const { body, mass, inertia } of rods) {
      sum += (mass * (body.getLinearVelocity().length() / UNITS) ** 2 + inertia * body.getAngularVelocity() ** 2) / 2;
    }
    return sum;
  }
}

/** Holds a lever against anything. */
const FAST = 1e12;

/** Unit a second; below about this, friction of a slot grows with the speed instead of being all there. */
const SLIDES = 0.05;

const NONE = -1;
const PEDAL = -2;

/** The driven and the driving lever of a gap. */
function leversOf(gap: Gap): readonly [number, number] {
  switch (gap.kind) {
    case 'stop':
      return [gap.lever, NONE];
    case 'pedal-stop':
      return [PEDAL, NONE];
    case 'cable':
      return [gap.joint.driven, gap.joint.driver ?? PEDAL];
    case 'seized':
      return [gap.end === 'driven' ? gap.joint.driven : gap.joint.driver!, NONE];
    case 'play':
      return [gap.joint.driven, gap.joint.driver];
  }
}

const scratch: GapState = { g: 0, rate: 0, change: 0 };
