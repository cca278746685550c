/** A pose for one lever alone against the pose of the whole. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { advance, advanceTo } from '../../src/kinematics/advance.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { solveSketch } from '../support/solveSketch.ts';

test('moving only what leads to a lever leaves it exactly where moving everything does', () => {
  let levers = 0;
  for (const sketch of fc.sample(anyMechanism({ levers: 5, stops: true }), { numRuns: 60, seed: 5 })) {
    const { build, mechanism } = solveSketch(sketch);
    const whole = createPose(mechanism);
    const alone = createPose(mechanism);
    for (const travel of [0, 0.37, 0.8, 1]) {
      advance(build, travel, whole);
      for (const { index, driver } of mechanism.levers) {
        // What stands in the pose from elsewhere must not count.
        advance(build, 0.11, alone);
        advanceTo(build, travel, alone, driver);
        for (const figure of ['rotation', 'cosine', 'sine', 'rate', 'curvature'] as const) {
          expect(alone[figure][index]).toBe(whole[figure][index]);
        }
        levers++;
      }
    }
  }
  expect(levers).toBe(60 * 4 * 5);
});
