/** Least squares by singular values, against certified values and against another program's linear algebra. */
import { eigs, inv, matrix, multiply, transpose, type Matrix } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { randomOf } from '../../src/numeric/random.ts';
import { covarianceOf, isOpen, shortestSolution, singularOf, triangleOf } from '../../src/numeric/singularValues.ts';

/**
 * NIST Statistical Reference Datasets, linear least squares, Longley (higher level of difficulty): data and certified values as the tests of
 * public statistics libraries quote them; the dataset's own page was not to be had. y and six predictors, 1947 to 1962.
 */
const LONGLEY = {
  y: [60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551],
  x: [
    [83, 88.5, 88.2, 89.5, 96.2, 98.1, 99, 100, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9],
    [234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704, 502601, 518173, 554894],
    [2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007],
    [1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827],
    [107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366, 125368, 127852, 130081],
    [1947, 1948, 1949, 1950, 1951, 1952, 1953, 1954, 1955, 1956, 1957, 1958, 1959, 1960, 1961, 1962],
  ],
  estimates: [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355,
  ],
  deviations: [
    890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.22607320006937, 455.478499142212,
  ],
  residualDeviation: 304.854073561965,
};

test('the estimates and standard deviations of Longley’s regression are those certified', () => {
  const { y, x, estimates, deviations, residualDeviation } = LONGLEY;
  const n = x.length + 1;
  // As the fit does, each unknown is counted in a scale of its own: here the size of its column.
  const scales = [1, ...x.map((column) => Math.hypot(...column))];
  const rows = Float64Array.from(y.flatMap((_, i) => [1, ...x.map((column) => column[i]!)].map((value, j) => value / scales[j]!)));
  const triangle = triangleOf(rows, Float64Array.from(y), n);
  const singular = singularOf(triangle);
  const found = shortestSolution(singular, triangle.c, 0).map((value, j) => value / scales[j]!);
  found.forEach((value, j) => expect(Math.abs(value / estimates[j]! - 1)).toBeLessThan(1e-8));
  const misses = y.map((value, i) => value - found[0]! - x.reduce((sum, column, j) => sum + column[i]! * found[j + 1]!, 0));
  const deviation = Math.sqrt(misses.reduce((sum, each) => sum + each * each, 0) / (y.length - n));
  expect(Math.abs(deviation / residualDeviation - 1)).toBeLessThan(1e-10);
  const covariance = covarianceOf(singular, 0);
  deviations.forEach((certified, j) => {
    const own = (deviation * Math.sqrt(covariance[j * n + j]!)) / scales[j]!;
    expect(Math.abs(own / certified - 1)).toBeLessThan(1e-8);
  });
});

describe('random systems', () => {
  const random = randomOf(3);
  const cases = Array.from({ length: 30 }, (_, k) => {
    const n = 1 + (k % 6);
    const rows = n + (k % 5);
    const a = Float64Array.from({ length: rows * n }, (__, i) => random.normal(k, i));
    const b = Float64Array.from({ length: rows }, (__, i) => random.normal(k, 1000 + i));
    return { n, rows, a, b };
  });
  const matrixOf = (a: Float64Array, n: number): Matrix =>
    matrix(Array.from({ length: a.length / n }, (_, i) => [...a.subarray(i * n, i * n + n)]));

  test('have the covariance and the solution that mathjs gives', () => {
    for (const { n, a, b } of cases) {
      const rowsOf = matrixOf(a, n);
      const inverse = inv(multiply(transpose(rowsOf), rowsOf));
      const solution = multiply(multiply(inverse, transpose(rowsOf)), matrix([...b])).toArray() as number[];
      const triangle = triangleOf(a, b, n);
      const singular = singularOf(triangle);
      const covariance = covarianceOf(singular, 0);
      const x = shortestSolution(singular, triangle.c, 0);
      const wanted = (inverse.toArray() as number[][]).flat();
      const size = Math.max(...wanted.map(Math.abs));
      wanted.forEach((value, i) => expect(Math.abs(covariance[i]! - value)).toBeLessThan(1e-9 * size));
      solution.forEach((value, j) => expect(Math.abs(x[j]! - value)).toBeLessThan(1e-8 * (1 + size)));
    }
  });

  test('have singular values whose squares are the eigenvalues of AᵀA by mathjs', () => {
    for (const { n, a, b } of cases) {
      const rowsOf = matrixOf(a, n);
      const { values } = eigs(multiply(transpose(rowsOf), rowsOf));
      const wanted = (values as Matrix)
        .toArray()
        .map(Number)
        .sort((p, q) => q - p);
      const found = singularOf(triangleOf(a, b, n)).values;
      wanted.forEach((value, k) => expect(found[k]! ** 2).toBeCloseTo(value, 8));
    }
  });
});

describe('equations that leave something open', () => {
  // x + y = 2 twice, and nothing of z.
  const triangle = triangleOf(Float64Array.from([1, 1, 0, 1, 1, 0, 1, 1, 0]), Float64Array.from([2, 2, 2]), 3);
  const singular = singularOf(triangle);
  const least = 1e-9 * singular.values[0]!;

  test('are solved by the shortest solution', () => {
    const x = shortestSolution(singular, triangle.c, least);
    [1, 1, 0].forEach((value, j) => expect(x[j]).toBeCloseTo(value, 12));
  });

  test('are known to leave it open', () => {
    expect(singular.values.filter((value) => value > least).length).toBe(1);
    expect([0, 1, 2].map((j) => isOpen(singular, j, least))).toEqual([true, true, true]);
    const closed = singularOf(triangleOf(Float64Array.from([1, 0, 0, 0]), Float64Array.from([1, 0]), 2));
    expect([0, 1].map((j) => isOpen(closed, j, 1e-9))).toEqual([false, true]);
  });

  test('may be fewer than the unknowns, or none', () => {
    const few = triangleOf(Float64Array.from([3, 4]), Float64Array.from([5]), 2);
    const x = shortestSolution(singularOf(few), few.c, 1e-9);
    expect(x[0]).toBeCloseTo(0.6, 12);
    expect(x[1]).toBeCloseTo(0.8, 12);
    const none = triangleOf(new Float64Array(0), new Float64Array(0), 2);
    expect([...shortestSolution(singularOf(none), none.c, 0)]).toEqual([0, 0]);
  });
});

test('a column of nothing, wherever it stands, takes nothing from the others', () => {
  // By hand: the mean of 3, 1 and 2, of variance 1/3 for readings of variance 1.
  for (const place of [0, 1]) {
    const rows = Float64Array.from([3, 1, 2].flatMap(() => (place === 0 ? [0, 1] : [1, 0])));
    const triangle = triangleOf(rows, Float64Array.from([3, 1, 2]), 2);
    const singular = singularOf(triangle);
    const [mean, idle] = place === 0 ? [1, 0] : [0, 1];
    const found = shortestSolution(singular, triangle.c, 1e-12);
    expect(found[mean]).toBeCloseTo(2, 14);
    expect(found[idle]).toBe(0);
    expect(covarianceOf(singular, 1e-12)[3 * mean]).toBeCloseTo(1 / 3, 14);
    expect([isOpen(singular, mean, 1e-12), isOpen(singular, idle, 1e-12)]).toEqual([false, true]);
  }
});
