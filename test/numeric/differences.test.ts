import { describe, expect, test } from 'vitest';
import { differences } from '../../src/numeric/differences.ts';
import { finished } from '../../src/studies/finished.ts';

/** x² y and sin y, where x is not above 2. */
const evaluate = ([x = NaN, y = NaN]: Float64Array, into: Float64Array): boolean => {
  into.set([x * x * y, Math.sin(y)]);
  return x <= 2;
};
const BOUNDS = { from: Float64Array.of(0, 0), to: Float64Array.of(3, 1), step: 1e-5 };

function at(x: number, y: number, firstRow = 0): readonly number[] {
  const point = Float64Array.of(x, y);
  const values = new Float64Array(2);
  evaluate(point, values);
  const jacobian = new Float64Array(4).fill(7);
  finished(differences(evaluate, point, values, { ...BOUNDS, firstRow }, jacobian));
  return [...jacobian];
}

describe('derivatives by differences', () => {
  // Against 2xy, x², 0 and cos y. A central difference misses by the square of its step, a one-sided one by the step.
  const exact = (x: number, y: number): readonly number[] => [2 * x * y, x * x, 0, Math.cos(y)];

  test('are central within the bounds', () => {
    at(1.2, 0.4).forEach((slope, i) => expect(Math.abs(slope - exact(1.2, 0.4)[i]!)).toBeLessThan(1e-9));
  });

  test('look to one side at a bound, and at the edge of what there is', () => {
    for (const [x, y] of [
      [0, 0.4],
      [1.2, 1],
      [2, 0.4],
    ] as const) {
      at(x, y).forEach((slope, i) => expect(Math.abs(slope - exact(x, y)[i]!)).toBeLessThan(5e-5));
    }
  });

  test('are 0 where there is nothing on either side, and leave the rows before the first asked for', () => {
    expect(at(2.5, 0.4).slice(0, 1)).toEqual([0]);
    expect(at(1.2, 0.4, 1).slice(0, 2)).toEqual([7, 7]);
  });
});
