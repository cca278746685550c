/** Least figures whose places are known by hand. */
import { expect, it } from 'vitest';
import { goldenSection } from '../../src/numeric/goldenSection.ts';

const KNOWN = { at: 0, value: Infinity };

it('finds the least of a figure with a corner, and of a smooth one', () => {
  const corner = goldenSection((at) => Math.abs(at - 0.37), 0, 1, KNOWN, 1e-9);
  expect(corner.at).toBeCloseTo(0.37, 8);
  expect(corner.value).toBeLessThan(1e-8);
  expect(goldenSection((at) => (at - 2) ** 2 + 5, 0, 3, KNOWN, 1e-9).value).toBeCloseTo(5, 12);
});

it('gives back what is known where nothing less is found, or where there is no figure', () => {
  const least = { at: 0.5, value: -1 };
  expect(goldenSection((at) => at, 0, 1, least, 1e-9)).toBe(least);
  expect(goldenSection(() => NaN, 0, 1, least, 1e-9)).toBe(least);
});
