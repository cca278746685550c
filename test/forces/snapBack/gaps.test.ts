/** Speed and acceleration of each gap against differences of where it stands, for random linkages with all joints and with free play. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gapAt, type GapState, type Moving } from '../../../src/forces/snapBack/gaps.ts';
import { gapsOf } from '../../../src/forces/snapBack/gapsOf.ts';
import { createPose } from '../../../src/kinematics/pose.ts';
import { anyMechanism } from '../../support/mechanisms.ts';
import { solveSketch } from '../../support/solveSketch.ts';

/** s; of central differences, whose error falls with its square. */
const H = 1e-4;

test('their rates are the derivatives of what they are', () => {
  let compared = 0;
  const kinds = new Set<string>();
  fc.assert(
    fc.property(
      anyMechanism({ stops: true }),
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }),
      (sketch, numbers) => {
        const { build, mechanism, poseAt } = solveSketch(sketch);
        const start = poseAt(0);
        const pose = createPose(mechanism);
        const levers = mechanism.levers.length;
        const moving: Moving = {
          build,
          pose,
          speed: new Float64Array(levers),
          acceleration: new Float64Array(levers),
          pedal: { q: 0, v: 0, a: 0 },
        };
        /** All levers turn evenly faster, each by its own figures. */
        const at = (time: number): void => {
          const along = (i: number): readonly [number, number, number] => {
            const [v, a] = [numbers[2 * i]!, numbers[2 * i + 1]!];
            return [0.1 * v + v * time + (a * time * time) / 2, v + a * time, a];
          };
          for (let lever = 0; lever < levers; lever++) {
            const [q, v, a] = along(lever);
            pose.rotation[lever] = q;
            pose.cosine[lever] = Math.cos(q);
            pose.sine[lever] = Math.sin(q);
            moving.speed[lever] = v;
            moving.acceleration[lever] = a;
          }
          [moving.pedal.q, moving.pedal.v, moving.pedal.a] = along(levers);
        };
        const isCable = (name: string): boolean => mechanism.cables.some((cable) => cable.name === name);
        const all = [
          ...gapsOf(
            build,
            start,
            () => false,
            () => false,
          ),
          ...gapsOf(build, start, () => false, isCable),
        ];
        for (const gap of all) {
          const stateAt = (time: number): GapState => {
            at(time);
            const state = { g: 0, rate: 0, change: 0 };
            gapAt(moving, gap, state);
            return state;
          };
          const [before, now, after] = [stateAt(-H), stateAt(0), stateAt(H)];
          expect((after.g - before.g) / (2 * H)).toBeCloseTo(now.rate, 6);
          expect((after.rate - before.rate) / (2 * H)).toBeCloseTo(now.change, 5);
          compared++;
          kinds.add(gap.kind === 'play' ? gap.joint.kind : gap.kind);
        }
      },
    ),
    { numRuns: 150 },
  );
  expect(compared).toBeGreaterThan(300);
  expect([...kinds]).toEqual(expect.arrayContaining(['stop', 'cable', 'seized', 'pedal-stop']));
});
