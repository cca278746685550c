/** What errors of the links do to the output angle, from whole throttle files read and solved anew, and from the engine's derivatives. */
import { describe, it } from 'vitest';
import { sensitivities } from '../../src/kinematics/sensitivity.ts';
import type { FourBar } from '../../src/kinematics/fourBar/index.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { DEG, expectFigure } from './support/check.ts';
import { halfTangentAngles } from './support/halfTangent.ts';
import { solveFourBar, type SolvedFourBar } from './support/offTheTable.ts';
import { toleranceCase } from './values/tolerance.ts';

const { links, theta2, perUnit, degPerUnit, tolerance } = toleranceCase;
const lengths = ['a', 'b', 'c', 'd'] as const;

describe.each([
  ['at rest', theta2],
  ['along the travel', theta2 - 25],
])('errors of the links off the table, %s', (_, start) => {
  // Output drawn as the exact linkage has it; a wrong link makes the linkage rest elsewhere, as when it is cut wrong.
  const theta4 = halfTangentAngles(links, start * DEG, -1).theta4 / DEG;
  const build = (own: FourBar, off = 0): SolvedFourBar => solveFourBar({ links: own, root: -1, start, travel: 40, theta4, drawnOff: off });
  const outputOf = (own: FourBar): number => build(own).theta4(theta2);
  const exact = build(links);

  it.each(lengths)('the published sensitivity by %s, by differences of files', (name) => {
    const step = 1e-3;
    const at = (by: number): number => outputOf({ ...links, [name]: links[name] + by });
    const slope = (8 * (at(step) - at(-step)) - (at(2 * step) - at(-2 * step))) / (12 * step);
    expectFigure(slope, degPerUnit[name], 8, `${name} in degrees`);
    expectFigure(slope * DEG, perUnit[name], 8, name);
  });

  it('the published sensitivity by the angle of the input arm, by differences of files and off the ratio column', () => {
    expectFigure(exact.slope(theta2), perUnit.theta2, 8, 'ratio');
    const step = 0.05;
    // The arm is clocked otherwise, the pedal stands as it did.
    const station = exact.station(theta2);
    const at = (by: number): number => {
      const file = solveFourBar({ links, root: -1, start: start + by, travel: 40, theta4 });
      return file.theta4(file.theta2(station));
    };
    const slope = (8 * (at(step) - at(-step)) - (at(2 * step) - at(-2 * step))) / (12 * step);
    expectFigure(slope, perUnit.theta2, 8, 'by clocking');
  });

  it("the published sensitivities by the engine's own derivatives", () => {
    const mechanism = mechanismOf(exact.text);
    const rates = sensitivities(solveTravel(mechanism).build, exact.station(theta2));
    const driven = mechanism.leverIndex.get('driven')!;
    const by = (path: string): number => {
      const dimension = mechanism.dimensions.find((each) => each.path === path);
      if (dimension === undefined) throw new Error(`no dimension ${path}`);
      return rates[dimension.index]![driven]!;
    };
    const perMillimetre = 1e-3;
    expectFigure(by('levers.foot.arms.pin.radius') * perMillimetre, perUnit.a, 8, 'a');
    expectFigure(by('rods.coupler.length') * perMillimetre, perUnit.b, 8, 'b');
    expectFigure(by('levers.driven.arms.pin.radius') * perMillimetre, perUnit.c, 8, 'c');
    expectFigure(by('levers.driven.pivot.0') * perMillimetre, perUnit.d, 8, 'd');
    expectFigure(by('levers.foot.pivot.0') * perMillimetre, -perUnit.d, 8, 'the other end of d');
    expectFigure(by('levers.foot.arms.pin.angle'), perUnit.theta2, 8, 'θ2');
    // Drawing the output arm elsewhere leaves it where the rod puts it: its rotation takes all of it back.
    expectFigure(by('levers.driven.arms.pin.angle'), -1, 12, 'drawn θ4');
  });

  it('the published spread of all sixteen corners, each a file of its own', () => {
    const middle = outputOf(links);
    let worst = 0;
    let squares = 0;
    for (let corner = 0; corner < 16; corner++) {
      const moved: Record<keyof FourBar, number> = { ...links };
      lengths.forEach((name, i) => (moved[name] += corner & (1 << i) ? tolerance : -tolerance));
      worst = Math.max(worst, Math.abs(outputOf(moved) - middle));
    }
    for (const name of lengths)
      squares +=
        ((outputOf({ ...links, [name]: links[name] + tolerance }) - outputOf({ ...links, [name]: links[name] - tolerance })) / 2) ** 2;
    expectFigure(worst, toleranceCase.cornersDeg, 6, 'corners');
    // Half of what each length does from end to end of its tolerance: the linear share to the third order of the tolerance.
    expectFigure(Math.sqrt(squares), toleranceCase.rootSumSquareDeg, 6, 'root of the sum of squares');
  });

  it('is the same however wrongly the output arm is drawn', () => {
    for (const off of [-5, 3]) expectFigure(build(links, off).theta4(theta2), exact.theta4(theta2), 11, `drawn ${off}° off`);
  });
});
