import { describe, expect, it } from 'vitest';
import { solvePosition } from '../../src/kinematics/fourBar/index.ts';
import { DEG, expectAngle } from './support/check.ts';
import { ballAt, distance, outputRotations } from './support/spatialFourBar.ts';
import { exampleLimits } from './values/positions.ts';
import { spatialCase } from './values/spatial.ts';

const { input, output, rod, rows, decimals } = spatialCase;

describe('the spatial four-bar by its own closed form, apart from the engine', () => {
  it.each(rows)('input %d°: output %d° and %d°', (theta, first, second) => {
    const found = [...outputRotations(input, output, rod, theta * DEG)].sort((one, next) => one - next);
    expect(found).toHaveLength(2);
    expectAngle(found[0], first, decimals, 'branch 1');
    expectAngle(found[1], second, decimals, 'branch 2');
    for (const psi of found) expect(Math.abs(distance(ballAt(input, theta * DEG), ballAt(output, psi)) - rod)).toBeLessThan(1e-9);
  });

  it('becomes the planar textbook example when its axes are parallel', () => {
    const { a, b, c, d } = exampleLimits.links;
    const axis = [0, 0, 1] as const;
    const crank = { pivot: [0, 0, 0], axis, ball: [a, 0, 0] } as const;
    const rocker = { pivot: [d, 0, 0], axis, ball: [d + c, 0, 0] } as const;
    const theta2 = exampleLimits.theta2 * DEG;
    const found = [...outputRotations(crank, rocker, b, theta2)].sort((one, next) => one - next);
    const planar = (['crossed', 'open'] as const).map((circuit) => solvePosition(exampleLimits.links, theta2, circuit)?.theta4 ?? NaN);
    expect(found).toHaveLength(2);
    found.forEach((psi, i) => expect(psi).toBeCloseTo(planar[i] ?? NaN, 12));
  });
});
