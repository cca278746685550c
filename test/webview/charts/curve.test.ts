import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { curvePath, lastFigure, valueAt } from '../../../webview/charts/curve.ts';
import { nudge } from '../../../webview/charts/endLabels.ts';

const plot = { left: 0, right: 100, top: 0, bottom: 100, x: (travel: number) => 100 * travel, y: (figure: number) => 100 - figure };
const stations = Float64Array.of(0, 0.25, 0.5, 0.75, 1);
const { NaN: none } = Number;

describe('a curve', () => {
  test('breaks where it has no figure', () => {
    expect(curvePath(stations, Float64Array.of(0, 10, none, 30, 40), plot)).toBe('M0 100L25 90M75 70L100 60');
  });

  test('shows a figure that stands alone, and nothing where there is none', () => {
    expect(curvePath(stations, Float64Array.of(none, 10, none, none, none), plot)).toBe('M25 90h0.1');
    expect(curvePath(stations, new Float64Array(5).fill(none), plot)).toBe('');
  });

  test('keeps a spike that is narrower than a pixel', () => {
    const many = Float64Array.from({ length: 10_001 }, (_, index) => index / 10_000);
    const path = curvePath(
      many,
      many.map((at) => (at === 0.5 ? 77 : 0)),
      plot,
    );
    expect(path).toContain(' 23L');
    expect(path.match(/[ML]/g)!.length).toBeLessThan(420);
  });

  test('is a straight line between stations, and unknown beside one that has no figure', () => {
    const values = Float64Array.of(0, 10, none, 30, 50);
    expect([0, 0.1, 0.25, 0.3, 0.75, 0.8, 1].map((at) => valueAt(stations, values, at))).toEqual([0, 4, 10, none, 30, 34, 50]);
    expect([lastFigure(values), lastFigure(Float64Array.of(1, none)), lastFigure(Float64Array.of(none))]).toEqual([4, 0, undefined]);
  });
});

describe('labels at the ends of curves', () => {
  test('stay where they are as long as none is over another', () => {
    expect(nudge([80, 20, 50], 15, 0, 100)).toEqual([80, 20, 50]);
  });

  test('give way downwards, and upwards where the chart ends', () => {
    expect(nudge([20, 20, 21], 15, 0, 100)).toEqual([20, 35, 50]);
    expect(nudge([99, 98], 15, 0, 100)).toEqual([100, 85]);
  });

  test('never overlap, keep the order of their curves and stay inside, whatever the curves', () => {
    const heights = fc.array(fc.double({ min: 0, max: 150, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(heights, (wanted) => {
        const places = nudge(wanted, 15, 0, 150);
        const sorted = [...places].sort((a, b) => a - b);
        expect(sorted[0]).toBeGreaterThanOrEqual(-1e-9);
        expect(sorted.at(-1)).toBeLessThanOrEqual(150 + 1e-9);
        sorted.forEach((place, index) => index > 0 && expect(place - sorted[index - 1]!).toBeGreaterThanOrEqual(15 - 1e-9));
        wanted.forEach((a, i) => wanted.forEach((b, j) => a < b && expect(places[i]!).toBeLessThan(places[j]!)));
      }),
    );
  });

  test('share the room evenly where there is too little', () => {
    expect(nudge([0, 0, 0, 0, 0], 15, 0, 40)).toEqual([0, 10, 20, 30, 40]);
  });
});
