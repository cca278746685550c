/**
 * Friction in planck: motors that hold a joint with no more than what it carries allows, as the step before told that. Of a bearing that is
 * what planck's joint holds, and what cables and free play pull on the lever besides: these turn it there as a torque alone.
 */
import { innerAt, rodDirection } from '../../kinematics/poseGeometry.ts';
import { capstanRatio } from '../friction/capstan.ts';
import { frictionRadius } from '../friction/circle.ts';
import { plateLoad } from '../friction/plateLoad.ts';
import type { Build } from '../../kinematics/build.ts';
import type { Gap } from './gaps.ts';
import { UNITS, type PlanckSlot, type PlanckWorld, type Revolute } from './planckWorld.ts';

export interface PlanckFriction {
  /** Before each step. @returns what slots take in it, J */
  rub(): number;
  /** After each step. @returns what motors have taken in it, J */
  taken(): number;
  /** Nothing pulls on levers as a torque alone: told before `pulled` of each step. */
  letGo(): void;
  /** What a gap presses with, N, or N·m of stops, which load no bearing. */
  pulled(gap: Gap, force: number): void;
}

export function createPlanckFriction(of: PlanckWorld, step: number): PlanckFriction {
  const { build, levers, bearings, rods, slots, pose } = of;
  const { mechanism, parameters: p } = build;
  const { friction } = mechanism;
  /** By lever, N. */
  const pulls = levers.map(() => ({ x: 0, y: 0 }));
  const motors: Revolute[] = [...bearings];
  const rubbing: (() => number)[] = [];
  const nothing = 0;
  for (const { joint, ends } of rods) {
    const { coefficient, pin } = friction.joints[joint.index]!;
    const radius = coefficient === undefined || pin === undefined ? 0 : frictionRadius(p[pin]!, p[coefficient]!) * UNITS;
    if (radius === 0) continue;
    for (const end of ends) {
      end.enableMotor(true);
      motors.push(end);
      rubbing.push(() => {
        end.setMaxMotorTorque(radius * end.getReactionForce(1 / step).length());
        return nothing;
      });
    }
  }
  for (const slot of slots) {
    const coefficient = friction.joints[slot.joint.index]!.coefficient;
    if (coefficient !== undefined && p[coefficient]! > 0) rubbing.push(() => rubSlot(of, slot, p[coefficient]!, step));
  }
  bearings.forEach((bearing, lever) => {
    const { bearing: bush, drag } = friction.levers[lever]!;
    const constant = drag === undefined ? 0 : p[drag]!;
    const radius = bush === undefined ? 0 : frictionRadius(p[bush.diameter]!, p[bush.friction]!);
    rubbing.push(() => {
      const held = bearing.getReactionForce(1 / step);
      const carried = radius === 0 ? 0 : Math.hypot(held.x / UNITS - pulls[lever]!.x, held.y / UNITS - pulls[lever]!.y);
      bearing.setMaxMotorTorque((constant + radius * (carried + pressedBy(of, lever, radius))) * UNITS ** 2);
      return nothing;
    });
  });

  const pull = (lever: number, x: number, y: number): void => {
    pulls[lever]!.x += x;
    pulls[lever]!.y += y;
  };

  return {
    rub: () => rubbing.reduce((sum, each) => sum + each(), 0),
    taken: () =>
      motors.reduce((sum, motor) => sum + (Math.abs(motor.getMotorTorque(1 / step) * motor.getJointSpeed()) * step) / UNITS ** 2, 0),
    letGo() {
      for (const each of pulls) each.x = each.y = 0;
    },
    pulled(gap, force) {
      if (force === 0) return;
      if (gap.kind === 'cable' || gap.kind === 'seized') {
        const { driver, driven } = gap.joint;
        const isAt = (end: 'driven' | 'driving'): boolean => gap.kind === 'cable' || gap.end === end;
        const before = gap.kind === 'cable' ? force / housingRatio(build, gap.joint.index) : force;
        for (const [lever, which, tension] of [
          [isAt('driven') ? driven : undefined, 'enters', force],
          [isAt('driving') ? driver : undefined, 'leaves', before],
        ] as const) {
          const inner = lever === undefined ? undefined : innerAt(build, pose, gap.joint, which);
          if (lever === undefined || inner === undefined) continue;
          const size = Math.hypot(inner[0], inner[1]);
          pull(lever, (-tension * inner[0]) / size, (-tension * inner[1]) / size);
        }
      } else if (gap.kind === 'play' && gap.joint.kind === 'rod') {
        const e = rodDirection(build, pose, gap.joint);
        const along = gap.side * force;
        pull(gap.joint.driven, along * e[0], along * e[1]);
        pull(gap.joint.driver, -along * e[0], -along * e[1]);
      }
    },
  };
}

/** Of a cable's housing: tension at the engine's end over that at the pedal's, as the inner runs back. */
export function housingRatio({ mechanism, parameters: p }: Build, joint: number): number {
  const { coefficient, bend } = mechanism.friction.joints[joint]!;
  return coefficient === undefined || bend === undefined ? 1 : capstanRatio(p[coefficient]!, p[bend]!);
}

/** By vacuum on the plates of a lever, N. */
function pressedBy({ build, pose }: PlanckWorld, lever: number, radius: number): number {
  if (radius === 0) return 0;
  const { attached, friction } = build.mechanism;
  let sum = 0;
  attached.plates.forEach((each, i) => (sum += each.lever === lever ? plateLoad(build, pose, each, friction.vacuum[i]) : 0));
  return sum;
}

/** @returns what it takes in a step, J */
function rubSlot(
  { build: { parameters: p }, levers }: PlanckWorld,
  { joint, wheel }: PlanckSlot,
  coefficient: number,
  step: number,
): number {
  const [forked, pinned] = [levers[joint.fork]!, levers[joint.pinLever]!];
  const at = wheel.getAnchorB();
  const axis = forked.getWorldVector({ x: p[joint.direction]!, y: p[joint.direction + 1]! });
  const [one, other] = [pinned.getLinearVelocityFromWorldPoint(at), forked.getLinearVelocityFromWorldPoint(at)];
  const speed = (one.x - other.x) * axis.x + (one.y - other.y) * axis.y;
  const force = coefficient * wheel.getReactionForce(1 / step).length();
  const rub = (-force * speed) / (Math.abs(speed) + SLIDES);
  pinned.applyForce({ x: rub * axis.x, y: rub * axis.y }, at);
  forked.applyForce({ x: -rub * axis.x, y: -rub * axis.y }, at);
  return (Math.abs(rub * speed) * step) / UNITS ** 2;
}

/** Units a second, 0.5 mm/s; below about this, friction of a slot grows with the speed instead of being all there. */
const SLIDES = 0.5;
