import { describe, expect, it } from 'vitest';
import { outputSensitivities, solvePosition, stackTolerances } from '../../src/kinematics/fourBar/index.ts';
import type { FourBar } from '../../src/kinematics/fourBar/index.ts';
import { DEG, expectFigure } from './support/check.ts';
import { toleranceCase } from './values/tolerance.ts';

const { links, theta2, circuit, perUnit, degPerUnit, tolerance } = toleranceCase;
const lengths = ['a', 'b', 'c', 'd'] as const;
const drawn = solvePosition(links, theta2 * DEG, circuit)!;
const sensitivities = outputSensitivities(links, drawn)!;
const stack = stackTolerances(sensitivities, { a: tolerance, b: tolerance, c: tolerance, d: tolerance });

describe('what errors of the links do to the output angle', () => {
  it('has the stated sensitivities', () => {
    for (const name of [...lengths, 'theta2'] as const) expectFigure(sensitivities[name], perUnit[name], 8, name);
    for (const name of lengths) expectFigure(sensitivities[name] / DEG, degPerUnit[name], 8, `${name} in degrees`);
  });

  it('agrees with differences of the solved position', () => {
    const step = 1e-4;
    for (const name of lengths) {
      const slope = (outputOf({ ...links, [name]: links[name] + step }) - outputOf({ ...links, [name]: links[name] - step })) / (2 * step);
      expect(Math.abs(slope - sensitivities[name]), name).toBeLessThan(1e-8);
    }
    const turned = (angle: number): number => solvePosition(links, angle, circuit)?.theta4 ?? NaN;
    const slope = (turned(theta2 * DEG + step) - turned(theta2 * DEG - step)) / (2 * step);
    expect(Math.abs(slope - sensitivities.theta2)).toBeLessThan(1e-8);
  });

  it('stacks to the stated worst case and root of the sum of squares', () => {
    expectFigure(stack.worstCase / DEG, toleranceCase.worstCaseDeg, 6, 'worst case');
    expectFigure(stack.rootSumSquare / DEG, toleranceCase.rootSumSquareDeg, 6, 'root of the sum of squares');
    expectFigure(stack.worstCase / stack.rootSumSquare, toleranceCase.ratio, 4, 'ratio');
  });

  it('comes within second order of all sixteen corners solved exactly', () => {
    let worst = 0;
    for (let corner = 0; corner < 16; corner++) {
      const moved: Record<keyof FourBar, number> = { ...links };
      lengths.forEach((name, i) => (moved[name] += corner & (1 << i) ? tolerance : -tolerance));
      worst = Math.max(worst, Math.abs(outputOf(moved) - drawn.theta4));
    }
    expectFigure(worst / DEG, toleranceCase.cornersDeg, 6, 'corners');
  });

  it('matches three sigma of random builds', () => {
    const random = seeded(20_240_607);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const builds = 40_000;
    let sum = 0;
    let squares = 0;
    for (let build = 0; build < builds; build++) {
      const moved: Record<keyof FourBar, number> = { ...links };
      for (const name of lengths) moved[name] += (tolerance / 3) * normal();
      const off = outputOf(moved) - drawn.theta4;
      sum += off;
      squares += off * off;
    }
    const sigma = Math.sqrt(squares / builds - (sum / builds) ** 2);
    expect(Math.abs(3 * sigma - stack.rootSumSquare) / DEG).toBeLessThan(toleranceCase.randomWithinDeg);
  });
});

function outputOf(moved: FourBar): number {
  return solvePosition(moved, theta2 * DEG, circuit)?.theta4 ?? NaN;
}

/** A small random generator (mulberry32), so that the run is the same every time. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
