import { describe, expect, test } from 'vitest';
import { leastSquares, type LeastSquares } from '../../src/numeric/leastSquares.ts';
import { finished } from '../../src/studies/finished.ts';

const PATIENCE = { steps: 500, enough: 0, still: 1e-14 };

/** Residuals and their derivatives written out. */
function problemOf(
  residualsAt: (x: Float64Array) => readonly number[],
  slopesAt: (x: Float64Array) => readonly (readonly number[])[],
  from: readonly number[],
  to: readonly number[],
): LeastSquares {
  return {
    count: residualsAt(Float64Array.from(from)).length,
    from: Float64Array.from(from),
    to: Float64Array.from(to),
    evaluate(x, into) {
      into.set(residualsAt(x));
      return into.every(Number.isFinite);
    },
    *differentiate(x, _, into) {
      into.set(slopesAt(x).flat());
      yield undefined;
    },
  };
}

const rosenbrock = (from: readonly number[], to: readonly number[]): LeastSquares =>
  problemOf(
    ([x = NaN, y = NaN]) => [10 * (y - x * x), 1 - x],
    ([x = NaN]) => [
      [-20 * x, 10],
      [-1, 0],
    ],
    from,
    to,
  );

describe('least squares within bounds', () => {
  // H. H. Rosenbrock, Computer Journal 3 (1960) 175: the minimum is 0 at (1, 1).
  test('comes through a bent valley', () => {
    const found = finished(leastSquares(rosenbrock([-5, -5], [5, 5]), Float64Array.of(-1.2, 1), PATIENCE))!;
    expect(found.x[0]).toBeCloseTo(1, 9);
    expect(found.x[1]).toBeCloseTo(1, 9);
    expect(found.cost).toBeLessThan(1e-20);
  });

  // On x ≤ 1/2 the least is where y = x², at x = 1/2: half of (1 − 1/2)².
  test('stops on a bound and goes along it', () => {
    const found = finished(leastSquares(rosenbrock([-5, -5], [0.5, 5]), Float64Array.of(-1.2, 1), PATIENCE))!;
    expect(found.x[0]).toBe(0.5);
    expect(found.x[1]).toBeCloseTo(0.25, 9);
    expect(found.cost).toBeCloseTo(0.125, 12);
  });

  // NIST StRD, nonlinear regression, Misra1a: y = b1 (1 − exp(−b2 x)), certified values and data from memory. A wrong digit in the data
  // would not give the certified sum of squares.
  test('meets the certified values of a published fit from both published starts', () => {
    const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760];
    const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
    const problem = problemOf(
      ([b1 = NaN, b2 = NaN]) => x.map((at, i) => b1 * (1 - Math.exp(-b2 * at)) - y[i]!),
      ([b1 = NaN, b2 = NaN]) => x.map((at) => [1 - Math.exp(-b2 * at), b1 * at * Math.exp(-b2 * at)]),
      [0, 0],
      [1000, 0.01],
    );
    for (const start of [Float64Array.of(500, 0.0001), Float64Array.of(250, 0.0005)]) {
      const found = finished(leastSquares(problem, start, PATIENCE))!;
      expect(found.x[0]! / 238.94212918).toBeCloseTo(1, 6);
      expect(found.x[1]! / 5.5015643181e-4).toBeCloseTo(1, 6);
      expect((2 * found.cost) / 0.12455138894).toBeCloseTo(1, 8);
    }
  });

  test('an unknown that nothing depends on stays where it is', () => {
    const flat = problemOf(
      ([x = NaN]) => [x - 0.3],
      () => [[1, 0]],
      [0, 0],
      [1, 1],
    );
    const found = finished(leastSquares(flat, Float64Array.of(0.9, 0.7), PATIENCE))!;
    expect(found.x[0]).toBeCloseTo(0.3, 9);
    expect(found.x[1]).toBe(0.7);
  });

  test('has no answer where there is nothing at the start, and goes around places where there is nothing', () => {
    const root = problemOf(
      ([x = NaN]) => [Math.sqrt(x - 0.5) - 0.1],
      ([x = NaN]) => [[0.5 / Math.sqrt(x - 0.5)]],
      [0],
      [1],
    );
    expect(finished(leastSquares(root, Float64Array.of(0.2), PATIENCE))).toBeUndefined();
    expect(finished(leastSquares(root, Float64Array.of(1), PATIENCE))!.x[0]).toBeCloseTo(0.51, 9);
  });
});
