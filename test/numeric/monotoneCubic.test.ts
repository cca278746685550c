import { describe, expect, test } from 'vitest';
import { hermite, monotoneSlopes } from '../../src/numeric/monotoneCubic.ts';

describe('the monotone cubic', () => {
  // Worked by hand from the definition: widths 1, 2, 1 and secants 2, 1, 4. Inside, (w1 + w2) / (w1/d1 + w2/d2) with w1 = 2·h_next + h_before
  // and w2 = h_next + 2·h_before: 9 / (5/2 + 4/1) and 9 / (4/1 + 5/4). At the ends the three-point formula: ((2·1 + 2)·2 − 1·1)/3
  // and ((2·1 + 2)·4 − 1·1)/3.
  test('has the slopes of its definition', () => {
    const slopes = monotoneSlopes([0, 1, 3, 4], [0, 2, 4, 8]);
    [7 / 3, 9 / 6.5, 9 / 5.25, 5].forEach((slope, i) => expect(slopes[i]).toBeCloseTo(slope, 12));
  });

  test('is level where the points turn, and does not leave their range', () => {
    const [x, y] = [
      [0, 1, 2, 3],
      [0, 1, 1, 0.2],
    ];
    const slopes = monotoneSlopes(x, y);
    expect(slopes[1]).toBe(0);
    expect(slopes[2]).toBe(0);
    for (let i = 0; i < 3; i++) {
      for (let at = x[i]!; at <= x[i + 1]!; at += 1 / 64) {
        const value = hermite(at, x[i]!, x[i + 1]!, y[i]!, y[i + 1]!, slopes[i]!, slopes[i + 1]!);
        expect(value).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - 1e-12);
        expect(value).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + 1e-12);
      }
    }
  });

  test('is the straight line through points on one', () => {
    const slopes = monotoneSlopes([0, 0.2, 1], [3, 3.4, 5]);
    slopes.forEach((slope) => expect(slope).toBeCloseTo(2, 12));
    expect(hermite(0.5, 0.2, 1, 3.4, 5, slopes[1]!, slopes[2]!)).toBeCloseTo(4, 12);
    expect(monotoneSlopes([0, 2], [1, 5])).toEqual([2, 2]);
  });

  test('any cubic is itself between two points with its own slopes', () => {
    const f = (x: number): number => 2 - x + 3 * x ** 2 - 0.5 * x ** 3;
    const slope = (x: number): number => -1 + 6 * x - 1.5 * x ** 2;
    for (const at of [-1, -0.3, 0.4, 1.7, 2]) expect(hermite(at, -1, 2, f(-1), f(2), slope(-1), slope(2))).toBeCloseTo(f(at), 12);
  });
});
