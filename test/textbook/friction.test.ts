/** Capstans and journal bearings of the textbooks. */
import { describe, expect, it } from 'vitest';
import { capstanRatio } from '../../src/forces/friction/capstan.ts';
import { frictionRadius } from '../../src/forces/friction/circle.ts';
import { holdingForce } from '../../src/forces/friction/holding.ts';
import { DEG, expectFigure } from './support/check.ts';
import { capstanRows, pulleyRows } from './values/friction.ts';

describe('a cable around a bend', () => {
  it.each(capstanRows)('is $name', ({ coefficient, wrap, slack, tight: [tension, decimals] }) => {
    expectFigure(slack * capstanRatio(coefficient, wrap * DEG), tension, decimals, 'tension');
  });

  it('loses the same again on the way back', () => {
    // From the table of sheath values: e^(2 μ θ) between pull and release.
    expectFigure(capstanRatio(0.15, 180 * DEG) ** 2, 1.601978 ** 2, 5, 'hysteresis');
  });
});

describe('a pulley on a shaft that rubs', () => {
  /** The pull that holds it as it is about to turn towards the pull (+1) or towards the load (−1). */
  const pullOn = ({ pulley, shaft, coefficient, load }: (typeof pulleyRows)[number], weight: number, way: 1 | -1): number => {
    const free = { moment: -load * (pulley / 2), x: 0, y: -load - weight, z: 0, drag: 0, radius: frictionRadius(shaft, coefficient), way };
    return holdingForce(free, pulley / 2, 0, -1, 0);
  };
  const weights = [0, 4];

  it.each(pulleyRows.map((row, i) => ({ ...row, weight: weights[i]! })))('is $name', (row) => {
    expectFigure(pullOn(row, row.weight, 1), row.lifts[0], row.lifts[1], 'to lift');
    if (row.holds !== undefined) expectFigure(pullOn(row, row.weight, -1), row.holds[0], row.holds[1], 'to hold');
  });

  it('is lifted by a level pull too, whose size follows from the friction circle', () => {
    // The same pulley, pulled level: the reaction meets the lines of load and pull in one point and touches the circle. Geometry of the
    // problem, worked out here: sin of the angle to 45° is r_f over √2 R, and the pull is W tan(45° + that).
    const radius = frictionRadius(2, 0.2);
    const angle = Math.asin(radius / (2 * Math.SQRT2));
    const free = { moment: -1000, x: 0, y: -500, z: 0, drag: 0, radius, way: 1 };
    expect(holdingForce(free, 2, 1, 0, 0)).toBeCloseTo(500 * Math.tan(Math.PI / 4 + angle), 9);
  });
});
