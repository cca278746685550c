/**
 * Ten thousand random linkages, planar and spatial, near toggles and change points on purpose, read from text and solved; their
 * pins rebuilt by another method from the rotations alone.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closureOf, continuation, isPin, type Closure, type Rotations } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { drivenLever, type Sketch, type SketchJoint } from '../support/sketch.ts';
import { sensesOf, solveSketch } from '../support/solveSketch.ts';

const MECHANISMS = 10_000;
const STATIONS = [0, 0.03, 0.1, 0.25, 0.5, 0.75, 1];

/** Relative to a rod's or the inner cable's length, or to a pin's reach. */
const KEPT = 1e-12;

describe('random linkages', () => {
  const sketches = fc.sample(anyMechanism(), { numRuns: MECHANISMS, seed: 20 });

  test('keep every length, stay on their branch, and stand where Newton steps with LU from mathjs bring them', () => {
    const failures: string[] = [];
    let compared = 0;
    let parted = 0;
    sketches.forEach((sketch, index) => {
      const solved = solveSketch(sketch);
      const closure = closureOf(sketch, sensesOf(solved.mechanism));
      const follow = continuation(closure);
      const drawn = Object.fromEntries(sketch.levers.map((lever) => [lever.name, 0]));
      const branches = sketch.joints.map((joint) => Math.sign(closure.leverage(joint, drawn)));
      let followed = true;
      for (const travel of STATIONS) {
        const rotations = solved.rotationsAt(travel);
        const say = (what: string): number => failures.push(`#${index} at ${travel}: ${what}`);
        sketch.joints.forEach((joint, i) => {
          const fault = jointFault(closure, joint, rotations, travel, branches[i]!);
          if (fault !== undefined) say(fault);
        });
        const other = followed ? follow.to(travel) : undefined;
        followed = other !== undefined;
        const assembled = Object.values(rotations).every((rotation) => !Number.isNaN(rotation));
        if (other === undefined) {
          parted++;
          continue;
        }
        compared++;
        for (const { name } of sketch.levers) {
          const miss = Math.abs(rotations[name]! - other.rotations[name]!);
          if (!(miss <= SAME + ROUNDING * other.magnified)) say(`${name} stands ${miss} rad off (magnified ${other.magnified}), ${assembled ? '' : 'not assembled'}`);
        }
      }
    });
    console.log({ compared, parted, failures: failures.length });
    expect(failures.slice(0, 20)).toEqual([]);
  });
});

/** rad. */
const SAME = 1e-11;
/** Relative error of figures that go through a dozen roundings. */
const ROUNDING = 1e-13;

function jointFault(closure: Closure, joint: SketchJoint, rotations: Rotations, travel: number, branch: number): string | undefined {
  const driven = rotations[drivenLever(joint)]!;
  if (Number.isNaN(driven)) return undefined;
  const residual = closure.residual(joint, rotations, travel);
  if (!(Math.abs(residual) <= KEPT)) return `${joint.kind} ${joint.name} is off by ${residual}`;
  const leverage = closure.leverage(joint, rotations);
  // At the toggle itself rounding decides the sign.
  if (leverage * branch < -1e-7) return `${joint.kind} ${joint.name} has left its branch: ${leverage}`;
  return undefined;
}
export { isPin };
export type { Sketch };
