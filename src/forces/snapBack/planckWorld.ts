/**
 * A planar linkage in planck: levers on revolute joints, rods as bodies between two more, slots as a pin on a line, couplings as gears.
 *
 * planck is made for things of about its unit and lets joints be off by 0.005 of it: 1 mm is one unit here, so that is 5 µm. Below 1 unit
 * a second its contacts do not bounce; none is used.
 */
import type { Body } from 'planck';
import { loadPlanck, type Planck } from '../../numeric/planck.ts';
import type { Build } from '../../kinematics/build.ts';
import type { RodJoint, SlotJoint } from '../../kinematics/model.ts';
import { hasPlay } from '../../kinematics/rest.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { springSpan, springTension } from '../springs.ts';
import { rateOf } from '../wire/rate.ts';
import type { Moving } from './gaps.ts';
import type { Prepared } from './prepare.ts';

export type Revolute = InstanceType<Planck['RevoluteJoint']>;
export type Wheel = InstanceType<Planck['WheelJoint']>;
type Vec2 = InstanceType<Planck['Vec2']>;

/** Units of planck's in a metre. */
export const UNITS = 1000;

export interface PlanckWorld {
  readonly planck: Planck;
  readonly build: Build;
  readonly world: InstanceType<Planck['World']>;
  readonly ground: Body;
  /** By lever, with the joint on which it turns. */
  readonly levers: readonly Body[];
  readonly bearings: readonly Revolute[];
  /** By lever: +1 where it turns as planck counts, −1 where its axis points the other way. */
  readonly sign: readonly number[];
  /** The pedal that is only a cable: a body that turns by one radian for one metre of pull. */
  readonly pedal: Body | undefined;
  /** Those without free play. */
  readonly rods: readonly PlanckRod[];
  readonly slots: readonly PlanckSlot[];
  /** How it stands and moves; filled by `read`. */
  readonly moving: Moving;
  readonly pose: Pose;
  /** Reads off how all stands. @returns the fastest of the levers, rad/s */
  read(): number;
  /** Puts what the springs pull on the levers, for one step. */
  pullBySprings(): void;
  /** J. */
  kineticEnergy(): number;
}

export interface PlanckRod {
  readonly joint: RodJoint;
  /** At its driving and its driven end. */
  readonly ends: readonly [Revolute, Revolute];
}

export interface PlanckSlot {
  readonly joint: SlotJoint;
  readonly wheel: Wheel;
}

/** m; stands for the arm of what carries a body's mass, where it has none. */
const USUAL_ARM = 0.03;

export function createPlanckWorld({ bare: build, start, isLost, inertias }: Prepared): PlanckWorld {
  const { mechanism, parameters: p } = build;
  const planck = loadPlanck();
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
  const bearings = levers.map((body) =>
    world.createJoint(new planck.RevoluteJoint({ enableMotor: true, motorSpeed: 0 }, ground, body, body.getPosition()))!,
  );
  const pedal = mechanism.drive.kind === 'cable' ? world.createBody({ type: 'dynamic' }) : undefined;
  if (pedal !== undefined && mechanism.drive.kind === 'cable') {
    weigh(pedal, inertias.pedal, inertias.pedal);
    pedal.setTransform(pedal.getPosition(), p[mechanism.drive.travel]! * start.travel);
    world.createJoint(new planck.RevoluteJoint({}, ground, pedal, pedal.getPosition()));
  }
  const bars: { readonly body: Body; readonly mass: number; readonly inertia: number }[] = [];
  const rods: PlanckRod[] = [];
  const slots: PlanckSlot[] = [];
  for (const joint of mechanism.joints) {
    if (isLost(joint.name) || hasPlay(joint)) continue;
    if (joint.kind === 'rod') rods.push(addRod(joint));
    if (joint.kind === 'slot') slots.push({ joint, wheel: addSlot(joint) });
    if (joint.kind === 'coupling') {
      const ratio = -p[joint.ratio]! * sign[joint.driver]! * sign[joint.driven]!;
      world.createJoint(
        new planck.GearJoint({}, levers[joint.driven]!, levers[joint.driver]!, bearings[joint.driven]!, bearings[joint.driver]!, ratio),
      );
    }
  }
  const moving: Moving = {
    build,
    pose,
    speed: new Float64Array(levers.length),
    acceleration: new Float64Array(levers.length),
    pedal: { q: 0, v: 0, a: 0 },
  };
  return { planck, build, world, ground, levers, bearings, sign, pedal, rods, slots, moving, pose, read, pullBySprings, kineticEnergy };

  function weigh(body: Body, mass: number, inertia: number): void {
    body.setMassData({ mass, center: new planck.Vec2(0, 0), I: inertia * UNITS ** 2 });
  }

  /** Where a pin stands, in planck's units. */
  function pinAt(lever: number, pin: number, at: Pose): Vec2 {
    const c = at.cosine[lever]!;
    const s = at.sine[lever]!;
    const along = (axis: number): number => (p[pin + axis]! + c * p[pin + 3 + axis]! + s * p[pin + 6 + axis]!) * UNITS;
    return new planck.Vec2(along(0), along(1));
  }

  function addRod(joint: RodJoint): PlanckRod {
    const { driver, driven, driverPin, drivenPin, index } = joint;
    const [first, second] = [pinAt(driver, driverPin, start), pinAt(driven, drivenPin, start)];
    const body = world.createBody({ type: 'dynamic', position: new planck.Vec2((first.x + second.x) / 2, (first.y + second.y) / 2) });
    const mass = inertias.rods[index]!;
    const length = Math.hypot(second.x - first.x, second.y - first.y) / UNITS;
    const inertia = (mass * length * length) / 12;
    weigh(body, mass, inertia);
    bars.push({ body, mass, inertia });
    const end = (lever: number, at: Vec2): Revolute =>
      world.createJoint(new planck.RevoluteJoint({ enableMotor: false, motorSpeed: 0 }, levers[lever]!, body, at))!;
    return { joint, ends: [end(driver, first), end(driven, second)] };
  }

  function addSlot({ pinLever, fork, pin, direction, normal, forkPivot, offset }: SlotJoint): Wheel {
    const [forked, pinned] = [levers[fork]!, levers[pinLever]!];
    const along = new planck.Vec2(p[direction]!, p[direction + 1]!);
    const from = new planck.Vec2(
      (p[forkPivot]! + p[offset]! * p[normal]!) * UNITS,
      (p[forkPivot + 1]! + p[offset]! * p[normal + 1]!) * UNITS,
    );
    const drawn = (body: Body, x: number, y: number): Vec2 => new planck.Vec2(x - body.getPosition().x, y - body.getPosition().y);
    return world.createJoint(
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
  }

  function read(): number {
    let fastest = 0;
    levers.forEach((body, lever) => {
      const rotation = turns[lever]! + sign[lever]! * body.getAngle();
      pose.rotation[lever] = rotation;
      pose.cosine[lever] = Math.cos(rotation);
      pose.sine[lever] = Math.sin(rotation);
      fastest = Math.max(fastest, Math.abs(body.getAngularVelocity()));
    });
    moving.pedal.q = pedal?.getAngle() ?? 0;
    return fastest;
  }

  function pullBySprings(): void {
    for (const spring of mechanism.attached.springs) {
      const { lever } = spring;
      if (spring.kind === 'torsion') {
        const opening = mechanism.senses[lever]! * pose.rotation[lever]!;
        const closing = p[spring.preload]! + rateOf(build, spring) * opening;
        levers[lever]!.applyTorque(-sign[lever]! * mechanism.senses[lever]! * closing * UNITS ** 2);
        continue;
      }
      const tension = springTension(build, pose, spring);
      if (tension === 0) continue;
      const { e, length } = springSpan(build, pose, spring);
      const [x, y] = [(tension * e[0] * UNITS) / length, (tension * e[1] * UNITS) / length];
      levers[lever]!.applyForce({ x: -x, y: -y }, pinAt(lever, spring.to, pose));
      if (spring.from.kind === 'pin') levers[spring.from.lever]!.applyForce({ x, y }, pinAt(spring.from.lever, spring.from.pin, pose));
    }
  }

  function kineticEnergy(): number {
    let sum = 0;
    levers.forEach((body, lever) => (sum += (inertias.levers[lever]! * body.getAngularVelocity() ** 2) / 2));
    if (pedal !== undefined) sum += (inertias.pedal * pedal.getAngularVelocity() ** 2) / 2;
    for (const { body, mass, inertia } of bars) {
      sum += (mass * (body.getLinearVelocity().length() / UNITS) ** 2 + inertia * body.getAngularVelocity() ** 2) / 2;
    }
    return sum;
  }
}
