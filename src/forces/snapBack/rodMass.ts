/**
 * The mass of rods. Of a slender rod of mass m whose ends move with P̈₁ and P̈₂ the pins feel −m (P̈₁/3 + P̈₂/6) and −m (P̈₁/6 + P̈₂/3); its
 * kinetic energy is m (Ṗ₁² + Ṗ₁·Ṗ₂ + Ṗ₂²)/6. A rod that hangs between two bodies is put half on each: how it turns between them is left out.
 */
import type { RodJoint } from '../../kinematics/model.ts';
import { createGrip, gripPin } from '../friction/line.ts';
import { putForce, type Acting } from './acting.ts';
import { createPinMotion, fillPin } from './gaps.ts';

export interface RodMass {
  /** Puts what the pins feel on the levers. */
  act(): void;
  /** Adds its part of each body's inertia for the body's coordinate. */
  addTo(masses: Float64Array): void;
}

/** @param masses of each rod by joint index, kg */
export function createRodMass(acting: Acting, masses: Float64Array): RodMass {
  const { build, moving, rubbed } = acting;
  const { pose, bodyOf } = acting.bodies;
  const rods = build.mechanism.joints.filter((joint): joint is RodJoint => joint.kind === 'rod' && masses[joint.index]! > 0);

  return {
    act() {
      for (const rod of rods) actOn(rod);
    },
    addTo(into) {
      for (const { driver, driven, driverPin, drivenPin, index } of rods) {
        const mass = masses[index]!;
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
    },
  };

  function actOn({ driver, driven, driverPin, drivenPin, index }: RodJoint): void {
    const mass = masses[index]!;
    const { speed, acceleration } = moving;
    fillPin(build, pose, driver, driverPin, speed[driver]!, acceleration[driver]!, first);
    fillPin(build, pose, driven, drivenPin, speed[driven]!, acceleration[driven]!, second);
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
    putForce(acting, lever, x, y, z, x * grip.tx + y * grip.ty + z * grip.tz);
    rubbed.power += x * speed[0]! + y * speed[1]! + z * speed[2]!;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  return a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
}

const first = createPinMotion();
const second = createPinMotion();
const grip = createGrip();
