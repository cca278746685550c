/** Roots and extremes against dense scans, with double roots and nearly degenerate coefficients on purpose. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bracketedRoot, turnRoots } from '../../src/numeric/roots.ts';
import {
  polynomialRoots,
  trigDerivative,
  trigExtremes,
  trigPolynomialOf,
  trigRoots,
  trigValue,
  type TrigPolynomial,
} from '../../src/numeric/trigPolynomial.ts';

const RUNS = { numRuns: 1000, seed: 9, endOnFailure: true };
const SCANNED = 4000;
const coefficient = fc.oneof(
  fc.integer({ min: -1e9, max: 1e9 }).map((each) => each / 1e9),
  fc.constantFrom(0, 1e-9, -1e-9, 1e-14, 1, -1),
);
const anyTrig: fc.Arbitrary<TrigPolynomial> = fc.tuple(coefficient, coefficient, coefficient, coefficient, coefficient);
const sizeOf = (g: TrigPolynomial): number => Math.max(...g.map(Math.abs));
const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

/** Angles between which a function changes its sign on a fine grid. */
function signChanges(f: (angle: number) => number): readonly number[] {
  const angles = Array.from({ length: SCANNED + 1 }, (_, i) => -Math.PI + (2 * Math.PI * i) / SCANNED + 1e-7);
  return angles.slice(1).filter((angle, i) => f(angles[i]!) * f(angle) < 0);
}

describe('trigonometric polynomials of the second degree', () => {
  test('are found again from their values', () => {
    fc.assert(
      fc.property(anyTrig, (g) => trigPolynomialOf((angle) => trigValue(g, angle)).every((each, i) => Math.abs(each - g[i]!) <= 1e-14)),
      RUNS,
    );
  });

  test('have every root that a scan of their sign finds', () => {
    fc.assert(
      fc.property(anyTrig, (g) => {
        const roots = trigRoots(g);
        return signChanges((angle) => trigValue(g, angle)).every((angle) =>
          roots.some((root) => apart(root, angle) <= (2 * Math.PI) / SCANNED + 1e-6),
        );
      }),
      RUNS,
    );
  });

  test('are zero at their roots, to rounding in their coefficients', () => {
    fc.assert(
      fc.property(anyTrig, (g) =>
        trigRoots(g).every((root) => root > -Math.PI && root <= Math.PI && Math.abs(trigValue(g, root)) <= 1e-12 * sizeOf(g)),
      ),
      RUNS,
    );
  });

  test('have every extreme that a scan of their slope finds', () => {
    fc.assert(
      fc.property(anyTrig, (g) => {
        const slope = trigDerivative(g);
        return signChanges((angle) => trigValue(slope, angle)).every((angle) =>
          trigExtremes(g).some((each) => apart(each, angle) <= (2 * Math.PI) / SCANNED + 1e-6),
        );
      }),
      RUNS,
    );
  });

  test('have a root where they only touch zero', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 1.5, max: 4, noNaN: true }), (at, beyond) => {
        // (1 − cos(φ − at)) (cos(φ − at) + beyond) touches zero at `at` and nowhere else.
        const g = trigPolynomialOf((angle) => (1 - Math.cos(angle - at)) * (Math.cos(angle - at) + beyond));
        return trigRoots(g).some((root) => apart(root, at) < 1e-6);
      }),
      { numRuns: 500, seed: 9 },
    );
  });

  test('have no root where they stay clear of zero, and none where they are zero everywhere', () => {
    expect(trigRoots([3, 1, 0, 0.5, 0])).toEqual([]);
    expect(trigRoots([0, 0, 0, 0, 0])).toEqual([]);
    expect(trigRoots([NaN, 1, 0, 0, 0])).toEqual([]);
  });
});

describe('A cos φ + B sin φ = C', () => {
  test('is solved by all its roots and has none where C is too great', () => {
    fc.assert(
      fc.property(coefficient, coefficient, coefficient, (a, b, c) => {
        const roots = turnRoots(a, b, c);
        const size = Math.hypot(a, b);
        if (roots.length === 0) return size <= Math.abs(c) * (1 + 1e-15);
        return roots.every((root) => Math.abs(a * Math.cos(root) + b * Math.sin(root) - c) <= 4e-16 * (size + Math.abs(c)));
      }),
      RUNS,
    );
  });
});

describe('polynomial roots', () => {
  test('are the factors that the polynomial was made of', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: -30, max: 30 }), { minLength: 1, maxLength: 4 }),
        fc.constantFrom(1, -3, 0.01),
        (wanted, leading) => {
          let c: number[] = [leading];
          for (const root of wanted) c = [...c, 0].map((_, i) => (c[i - 1] ?? 0) - root * (c[i] ?? 0));
          const found = polynomialRoots(c);
          const sorted = [...wanted].sort((x, y) => x - y);
          return found.length === sorted.length && found.every((root, i) => Math.abs(root - sorted[i]!) < 1e-9);
        },
      ),
      RUNS,
    );
  });

  test('come once where two fall together', () => {
    // (x − 2)² (x + 1)
    expect(polynomialRoots([4, 0, -3, 1]).map((root) => Number(root.toFixed(6)))).toEqual([-1, 2]);
  });

  test('do not suffer from a leading coefficient that is rounding', () => {
    expect(polynomialRoots([-6, 1, 1, 1e-17]).map((root) => Number(root.toFixed(9)))).toEqual([-3, 2]);
  });
});

describe('a bracketed root', () => {
  test('is found to the width asked for, whatever the shape', () => {
    const shapes: readonly ((x: number) => number)[] = [
      (x) => Math.exp(x) - 2,
      (x) => x ** 9,
      (x) => Math.atan(1e6 * (x - 0.3)),
      (x) => Math.sign(x - 0.7) * Math.sqrt(Math.abs(x - 0.7)),
    ];
    for (const [i, wanted] of [Math.LN2, 0, 0.3, 0.7].entries()) {
      const f = shapes[i]!;
      expect(Math.abs(bracketedRoot(f, -1, f(-1), 1.5, f(1.5), 1e-14) - wanted)).toBeLessThan(i === 1 ? 1e-12 : 1e-13);
    }
  });

  test('is an end where that is zero, and ends where a value is no number', () => {
    expect(bracketedRoot((x) => x, 0, 0, 1, 1, 0)).toBe(0);
    expect(bracketedRoot((x) => x - 1, 0, -1, 1, 0, 0)).toBe(1);
    expect(bracketedRoot(() => NaN, 0, -1, 1, 1, 0)).toBe(0);
  });
});
