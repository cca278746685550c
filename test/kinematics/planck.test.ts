/**
 * Two hundred planar four-bars against planck bodies on revolute joints, to planck's stated accuracy.
 *
 * planck lets a joint be off by `linearSlop`, 0.005 of its units, and is made for things of about a unit: 10 mm are one unit here, so
 * a lever's arm is 1.5 to 8 of them. Each of the three joints of the loop may be off by that, across the driven arm magnified by
 * 1 / sin of the transmission angle.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closureOf } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import type { Sketch } from '../support/sketch.ts';
import { solveSketch } from '../support/solveSketch.ts';
import type { Vector } from '../support/vector.ts';

const FOUR_BARS = 200;
const MM_PER_UNIT = 10;
const LINEAR_SLOP = 0.005;
/** The three moving joints of the loop. */
const JOINTS = 3;
/** Stations are compared up to where the sine of the transmission angle first falls below this. */
const LEAST_SINE = 0.25;
const STEPS = 240;
/** Steps in which bodies that lie still at first come up to speed. */
const SETTLING = 4;

test('two hundred planar four-bars stand where planck bodies on revolute joints do', { timeout: 60_000 }, async () => {
  const planck = await import('planck');

  /** Turns the driving lever step by step. @returns the driven body's angle after each */
  function stepBodies(sketch: Sketch, swing: number, steps: number): readonly number[] {
    const joint = sketch.joints[0]!;
    if (joint.kind !== 'rod') throw new Error('Rods alone are asked for');
    const [foot, driven] = sketch.levers as [Sketch['levers'][number], Sketch['levers'][number]];
    const at = ([x, y]: Vector) => new planck.Vec2(x / MM_PER_UNIT, y / MM_PER_UNIT);
    const pin1 = at(foot.arms[joint.from.part]!);
    const pin2 = at(driven.arms[joint.to.part]!);
    const world = new planck.World({ gravity: new planck.Vec2(0, 0), allowSleep: false });
    const ground = world.createBody();
    const body = (type: 'kinematic' | 'dynamic', position: ReturnType<typeof at>) => {
      const made = world.createBody({ type, position });
      made.createFixture({ shape: new planck.CircleShape(1), density: 1, filterMaskBits: 0 });
      return made;
    };
    const crank = body('kinematic', at(foot.pivot));
    const coupler = body('dynamic', new planck.Vec2((pin1.x + pin2.x) / 2, (pin1.y + pin2.y) / 2));
    const output = body('dynamic', at(driven.pivot));
    world.createJoint(new planck.RevoluteJoint({}, crank, coupler, pin1));
    world.createJoint(new planck.RevoluteJoint({}, coupler, output, pin2));
    world.createJoint(new planck.RevoluteJoint({}, ground, output, at(driven.pivot)));
    const dt = 1 / 60;
    crank.setAngularVelocity(swing / (steps * dt));
    const angles: number[] = [];
    for (let i = 0; i < steps; i++) {
      world.step(dt, 20, 20);
      angles.push(output.getAngle());
    }
    return angles;
  }

  const faults: string[] = [];
  let compared = 0;
  let stations = 0;
  for (const sketch of fc.sample(anyMechanism({ only: 'planar', joints: ['rod'], levers: 2 }), { numRuns: 3 * FOUR_BARS, seed: 8 })) {
    if (compared === FOUR_BARS) break;
    const joint = sketch.joints[0]!;
    const driven = sketch.levers[1]!;
    const solved = solveSketch(sketch);
    const closure = closureOf(sketch, {});
    const sines = Array.from({ length: STEPS + 1 }, (_, i) => Math.abs(closure.leverage(joint, solved.rotationsAt(i / STEPS))));
    const pinEnd = joint.kind === 'rod' ? driven.arms[joint.to.part]! : driven.pivot;
    const arm = Math.hypot(pinEnd[0] - driven.pivot[0], pinEnd[1] - driven.pivot[1]);
    // `leverage` is arm · sin / length.
    const sine = (i: number): number => (sines[i]! * closure.lengthOf(joint)) / arm;
    let last = 0;
    while (last < STEPS && sine(last + 1) > LEAST_SINE) last++;
    if (last < STEPS / 10) continue;
    compared++;
    const swing = solved.rotationsAt(last / STEPS).foot!;
    const angles = stepBodies(sketch, swing, last);
    angles.forEach((angle, i) => {
      if (i < SETTLING) return;
      stations++;
      const miss = Math.abs(angle - solved.rotationsAt((i + 1) / STEPS)[driven.name]!);
      const allowed = (JOINTS * LINEAR_SLOP) / ((arm / MM_PER_UNIT) * sine(i + 1));
      if (!(miss <= allowed)) faults.push(`#${compared} at ${i + 1}: ${miss} rad off, ${allowed} allowed`);
    });
  }
  expect(faults).toEqual([]);
  expect(compared).toBe(FOUR_BARS);
  expect(stations).toBeGreaterThan(10_000);
});
