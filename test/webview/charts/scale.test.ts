import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { extent, niceScale } from '../../../webview/charts/scale.ts';

describe('a scale', () => {
  test.each([
    [0, 100, 4, [0, 20, 40, 60, 80, 100], 0],
    [0, 4.05, 4, [0, 1, 2, 3, 4, 5], 0],
    [-0.3, 0.9, 4, [-0.5, 0, 0.5, 1], 1],
    [0.936, 3.9, 4, [0, 1, 2, 3, 4], 0],
    [1000, 1000.4, 4, [1000, 1000.1, 1000.2, 1000.3, 1000.4], 1],
  ])('from %d to %d in about %d steps has round figures', (from, to, count, ticks, digits) => {
    expect(niceScale(from, to, count)).toMatchObject({ ticks, digits });
  });

  test('of a level curve has the curve in its middle', () => {
    expect(niceScale(0, 0, 4)).toMatchObject({ least: -1, greatest: 1 });
    const { least, greatest } = niceScale(30, 30, 4);
    expect((least + greatest) / 2).toBeCloseTo(30, 9);
  });

  test('holds what it is made for, in few steps of one size, whatever that is', () => {
    const figure = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(figure, figure, fc.integer({ min: 1, max: 10 }), (a, b, count) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const { least, greatest, ticks } = niceScale(from, to, count);
        expect(least).toBeLessThan(greatest);
        const slack = 1e-8 * Math.max(1, Math.abs(from), Math.abs(to));
        expect(least).toBeLessThanOrEqual(from + slack);
        expect(greatest).toBeGreaterThanOrEqual(to - slack);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        // Steps may be a fifth finer than was asked for, and both ends add one.
        expect(ticks.length).toBeLessThanOrEqual(count / 0.79 + 3);
      }),
    );
  });

  test('leaves out what is no number', () => {
    expect(extent([Number.NaN, 3, -2, Number.NaN])).toEqual([-2, 3]);
    expect(extent([Number.NaN])).toBeUndefined();
  });
});
