/** Least, greatest, zeros and ranges of figures whose shape is known by hand, with bottoms on a sample, beside one and at corners. */
import { describe, expect, test } from 'vitest';
import { following, greatestOf, leastOf, rangesBelow, samplesOf, zerosOf, type Along } from '../../src/travel/extremes.ts';

const GRID = samplesOf([]);

/** How often a figure is read beside its samples. */
function counted(figure: Along, samples: readonly number[]): { readonly figure: Along; readonly count: () => number } {
  const known = new Set(samples);
  let count = 0;
  return {
    figure: (at) => {
      if (!known.has(at)) count++;
      return figure(at);
    },
    count: () => count,
  };
}

describe('the least of a figure', () => {
  test.each([0.3, 0.3 + 1e-4, 0.3 + 3e-6, 0.3 + 1e-7])('lies at the bottom of a smooth dip at %d, to 1e-9 relative', (bottom) => {
    const least = leastOf((at) => 2 + 40 * (at - bottom) ** 2, GRID);
    expect(Math.abs((least?.value ?? NaN) - 2)).toBeLessThan(2e-9);
    expect(least?.travel).toBeCloseTo(bottom, 5);
  });

  test.each([0.3 + 4e-4, 0.3 - 4e-4])('is found in a dip at %d that is so gentle that next to the sample it is hardly lower', (bottom) => {
    // At the sample itself it would be 1.6e-8 too high.
    const least = leastOf((at) => 1 + 0.1 * (at - bottom) ** 2, GRID);
    expect(Math.abs((least?.value ?? NaN) - 1)).toBeLessThan(1e-9);
  });

  test.each([0.3, 0.3 + 1e-4, 0.3 + 3e-7, 0.3 + 2e-8, 0.3 - 2e-8])('lies at a corner at %d, to what 1e-9 of the travel makes', (corner) => {
    const least = leastOf((at) => 1 + 5 * Math.abs(at - corner), GRID);
    expect(Math.abs((least?.value ?? NaN) - 1)).toBeLessThan(5 * 2e-9);
    expect(Math.abs((least?.travel ?? NaN) - corner)).toBeLessThan(2e-9);
  });

  test('is the sample itself where that is the bottom, and then is not searched for at length', () => {
    const { figure, count } = counted((at) => 2 + 40 * (at - 0.3) ** 2, GRID);
    expect(leastOf(figure, GRID)).toEqual({ travel: 0.3, value: 2 });
    expect(count()).toBeLessThan(10);
  });

  test('is undefined of a figure without a value, and found up to the edge of one that has it in part', () => {
    expect(leastOf(() => NaN, GRID)).toBeUndefined();
    const edge = Math.SQRT1_2;
    const least = leastOf((at) => (at > edge ? NaN : -at), GRID);
    expect(least?.travel).toBeCloseTo(edge, 12);
  });

  test('is the greatest with its sign turned', () => {
    const wave: Along = (at) => Math.sin(5 * at + 1);
    expect(greatestOf(wave, GRID)?.value).toBe(-(leastOf((at) => -wave(at), GRID)?.value ?? NaN));
  });
});

describe('a figure that follows from another', () => {
  const wave: Along = (at) => Math.sin(9 * at);

  test('has the same extremes, zeros and ranges as one that is read for itself', () => {
    const own: Along = (at) => wave(at) - 0.25;
    const follower = following(wave, (value) => value - 0.25);
    expect(leastOf(follower, GRID)).toEqual(leastOf(own, GRID));
    expect(zerosOf(follower, GRID)).toEqual(zerosOf(own, GRID));
    expect(zerosOf(follower, GRID)).toHaveLength(3);
    expect(rangesBelow(follower, GRID)).toEqual(rangesBelow(own, GRID));
  });

  test('is not read anew at the samples', () => {
    let read = 0;
    const figure: Along = (at) => {
      read++;
      return wave(at);
    };
    leastOf(figure, [0, 0.5, 1]);
    const before = read;
    zerosOf(
      following(figure, (value) => value + 2),
      GRID,
    );
    const searched = read;
    zerosOf(
      following(figure, (value) => value + 3),
      GRID,
    );
    expect(searched - before).toBe(GRID.length);
    expect(read).toBe(searched);
  });

  test('may lack a value where the other has one', () => {
    const positive = following(wave, (value) => (value > 0 ? value : NaN));
    expect(leastOf(positive, GRID)?.value).toBeGreaterThan(0);
    expect(leastOf(positive, GRID)?.value).toBeLessThan(1e-9);
  });
});
