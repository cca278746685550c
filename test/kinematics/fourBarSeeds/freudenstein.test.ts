import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chebyshevPoints,
  followBranch,
  freudensteinConstants,
  freudensteinResidual,
  outputError,
  solvePosition,
  synthesise,
} from '../../../src/kinematics/fourBar/index.ts';
import type { AnglePair } from '../../../src/kinematics/fourBar/index.ts';
import { anyAngle, anySignedLinks } from './arbitrary.ts';

describe('three-point synthesis', () => {
  it('meets all three points to 1e-9 on random triples', () => {
    let met = 0;
    const pair = fc.record({ phi: anyAngle, psi: anyAngle });
    fc.assert(
      fc.property(fc.tuple(pair, pair, pair), (pairs) => {
        const found = synthesise(pairs);
        if (found.kind === 'failed') return;
        met++;
        const { a, b, c } = found.fourBar;
        const longest = Math.max(Math.abs(a), Math.abs(c), b, 1);
        const size = Math.max(Math.abs(found.constants.k1), Math.abs(found.constants.k2), Math.abs(found.constants.k3), 1);
        for (const point of pairs) {
          expect(Math.abs(freudensteinResidual(found.constants, point)) / size).toBeLessThan(1e-12);
          const x = 1 + c * Math.cos(point.psi) - a * Math.cos(point.phi);
          const y = c * Math.sin(point.psi) - a * Math.sin(point.phi);
          expect(Math.abs(Math.hypot(x, y) - b) / longest).toBeLessThan(COUPLER_AGREEMENT);
        }
      }),
      { numRuns: 4 * 5000, seed: 7731 },
    );
    expect(met).toBeGreaterThan(4000);
  });

  it('gets a linkage back from three of its own positions', () => {
    let met = 0;
    fc.assert(
      fc.property(anySignedLinks, anyAngle, (links, start) => {
        const pairs = [0, 0.7, 1.5].flatMap((by): AnglePair[] => {
          const position = solvePosition(links, start + by, 'open');
          return position ? [{ phi: start + by, psi: position.theta4 }] : [];
        });
        if (pairs.length < 3) return;
        const found = synthesise(pairs);
        if (found.kind === 'failed') return;
        const expected = freudensteinConstants(links);
        const { a, b, c, d } = links;
        // Where the three points nearly lie on one line, they determine the links to fewer digits.
        if (spread(pairs) < 1e-3) return;
        met++;
        const size = Math.max(Math.abs(expected.k1), Math.abs(expected.k2), Math.abs(expected.k3), 1);
        expect(Math.abs(found.constants.k1 - expected.k1) / size).toBeLessThan(1e-8);
        expect(Math.abs(found.fourBar.a * d - a) / Math.abs(a)).toBeLessThan(1e-6 * size);
        expect(Math.abs(found.fourBar.c * d - c) / Math.abs(c)).toBeLessThan(1e-6 * size);
        expect(Math.abs(found.fourBar.b * d - b) / (b + Math.abs(a) + Math.abs(c) + d)).toBeLessThan(1e-6 * size);
      }),
      { numRuns: 4 * 3000, seed: 7732 },
    );
    expect(met).toBeGreaterThan(500);
  });

  it('says why there is no linkage', () => {
    const at = (phi: number, psi: number): AnglePair => ({ phi, psi });
    const failure = (pairs: readonly AnglePair[]): string => {
      const found = synthesise(pairs);
      return found.kind === 'failed' ? found.failure : found.kind;
    };
    expect(failure([])).toBe('too-few-points');
    expect(failure([at(0, 1), at(1, 2)])).toBe('too-few-points');
    expect(failure([at(0, 1), at(1, 2), at(NaN, 2)])).toBe('not-finite');
    expect(failure([at(0.3, 1), at(1, 2), at(1, 2)])).toBe('repeated-points');
    expect(failure([at(0.3, 1), at(1, 2), at(1 + 2 * Math.PI, 2)])).toBe('repeated-points');
    expect(failure([at(0.3, 0.3), at(1, 1), at(2, 2)])).toBe('singular');
    expect(failure([at(0.3, 1), at(0.3, 2), at(0.3, 3)])).toBe('singular');
    // cos ψ and cos φ on one line without equal points: ψ = −φ there.
    expect(failure([at(0.3, -0.3), at(1, -1), at(2, -2)])).toBe('singular');
    // A mirrored pair has the same cosines and nothing new to say.
    expect(failure([at(0.3, 1), at(-0.3, 1), at(2, 2)])).toBe('singular');
    // ψ square to φ at φ = 90° steps makes the output link endless: K2 cos φ must vanish.
    expect(failure([at(Math.PI / 2, 0), at(-Math.PI / 2, Math.PI), at(0, Math.PI / 2)])).toBe('endless-link');
  });

  it('never throws and never answers with anything but finite numbers', () => {
    const any = fc.record({ phi: fc.double(), psi: fc.double() });
    const coarse = fc.record({ phi: fc.integer({ min: -8, max: 8 }), psi: fc.integer({ min: -8, max: 8 }) });
    const quarter = coarse.map(({ phi, psi }) => ({ phi: (phi * Math.PI) / 4, psi: (psi * Math.PI) / 4 }));
    fc.assert(
      fc.property(fc.array(fc.oneof(any, quarter), { maxLength: 6 }), (pairs) => {
        const found = synthesise(pairs);
        if (found.kind === 'linkage') expect(Object.values(found.fourBar).every(Number.isFinite)).toBe(true);
        else expect(found.message.length).toBeGreaterThan(10);
      }),
      { numRuns: 4 * 3000, seed: 7733 },
    );
  });
});

describe('least squares', () => {
  it('leaves a residual square to every column, so that no other constants leave less', () => {
    const pairs = [0, 1, 2, 3, 4, 5].map((i) => ({ phi: 0.4 + 0.3 * i, psi: 1 + 0.25 * i + 0.02 * i * i }));
    const found = synthesise(pairs);
    if (found.kind === 'failed') throw new Error(found.message);
    const left = pairs.map((pair) => freudensteinResidual(found.constants, pair));
    const along = (column: (pair: AnglePair) => number): number => pairs.reduce((sum, pair, i) => sum + column(pair) * (left[i] ?? NaN), 0);
    expect(Math.abs(along(() => 1))).toBeLessThan(1e-13);
    expect(Math.abs(along(({ psi }) => Math.cos(psi)))).toBeLessThan(1e-13);
    expect(Math.abs(along(({ phi }) => Math.cos(phi)))).toBeLessThan(1e-13);
    expect(found.residual).toBe(Math.max(...left.map(Math.abs)));
  });

  it('meets points of a real linkage exactly, however many', () => {
    const links = { a: 0.8, b: 1.7, c: 0.6, d: 1 };
    const pairs = [0, 1, 2, 3, 4, 5, 6].map((i) => ({
      phi: 2.6 + 0.1 * i,
      psi: solvePosition(links, 2.6 + 0.1 * i, 'crossed')?.theta4 ?? NaN,
    }));
    const found = synthesise(pairs);
    if (found.kind === 'failed') throw new Error(found.message);
    for (const name of ['a', 'b', 'c'] as const) expect(found.fourBar[name]).toBeCloseTo(links[name], 9);
  });
});

describe('the branch through the points', () => {
  const links = { a: 40, b: 120, c: 80, d: 100 };
  const onCircuit = (phi: number, circuit: 'open' | 'crossed'): AnglePair => ({
    phi,
    psi: solvePosition(links, phi, circuit)?.theta4 ?? NaN,
  });
  const range = { from: 0, to: 3 };

  it('is followed without complaint when they all lie on it', () => {
    const points = [0.5, 1.5, 2.5].map((phi) => onCircuit(phi, 'crossed'));
    const found = followBranch(links, points, range);
    expect(found.branch).toEqual({ circuit: 'crossed', range, points: [0, 1, 2] });
    expect(found.defects).toEqual([]);
    for (const point of points) expect(Math.abs(outputError(links, 'crossed', point) ?? NaN)).toBeLessThan(1e-12);
  });

  it('is the one with most points, and the others are a defect', () => {
    const points = [onCircuit(0.5, 'crossed'), onCircuit(1.5, 'open'), onCircuit(2.5, 'open')];
    const found = followBranch(links, points, range);
    expect(found.branch).toMatchObject({ circuit: 'open', points: [1, 2] });
    expect(found.defects).toEqual([
      {
        kind: 'branch',
        branches: [
          { circuit: 'crossed', range, points: [0] },
          { circuit: 'open', range, points: [1, 2] },
        ],
      },
    ]);
  });

  it('ends at a gap: the same root beyond it is another branch', () => {
    const rocker = { a: 9, b: 3, c: 8, d: 7 };
    const point = (phi: number): AnglePair => ({ phi, psi: solvePosition(rocker, phi, 'open')?.theta4 ?? NaN });
    const found = followBranch(rocker, [point(-1), point(1)], { from: -1.2, to: 1.2 });
    expect(found.defects.map(({ kind }) => kind)).toEqual(['branch', 'assemblyGap']);
    const gap = found.defects.find((defect) => defect.kind === 'assemblyGap');
    expect(gap?.range.to).toBeCloseTo((33.5573 * Math.PI) / 180, 5);
    expect(gap?.range.from).toBeCloseTo((-33.5573 * Math.PI) / 180, 5);
  });

  it('names points in a gap, points out of order and change points on the way', () => {
    const rocker = { a: 9, b: 3, c: 8, d: 7 };
    expect(followBranch(rocker, [{ phi: 0, psi: 1 }], { from: -0.1, to: 0.1 })).toEqual({
      branch: undefined,
      defects: [{ kind: 'assemblyGap', range: { from: -0.1, to: 0.1 }, points: [0] }],
    });
    const backwards = [0.5, 2.5, 1.5].map((phi) => onCircuit(phi, 'open'));
    expect(followBranch(links, backwards, range).defects).toEqual([{ kind: 'order', point: 2 }]);
    const change = { a: 5, b: 7, c: 6, d: 8 };
    const point = { phi: 3, psi: solvePosition(change, 3, 'open')?.theta4 ?? NaN };
    expect(followBranch(change, [point], { from: 2.9, to: 3.3 }).defects).toEqual([{ kind: 'changePoint', phi: Math.PI }]);
  });
});

describe("Chebyshev's spacing", () => {
  it('lies inside the range, symmetric about its middle, and is empty for no sensible count', () => {
    const points = chebyshevPoints(2, 6, 6);
    points.forEach((x, i) => {
      expect(x).toBeGreaterThan(2);
      expect(x).toBeLessThan(6);
      expect(x + (points[5 - i] ?? NaN)).toBeCloseTo(8, 12);
    });
    for (const count of [0, -1, 2.5, NaN, Infinity, 1e12]) expect(chebyshevPoints(0, 1, count)).toEqual([]);
  });
});

/** Couplers rebuilt at the three points, in parts of the longest link. */
const COUPLER_AGREEMENT = 1e-9;

/** Twice the area of the triangle of (cos ψ, cos φ): how well the points determine the constants. */
function spread([one, two, three]: readonly AnglePair[]): number {
  if (!one || !two || !three) return 0;
  const x = (pair: AnglePair): number => Math.cos(pair.psi) - Math.cos(one.psi);
  const y = (pair: AnglePair): number => Math.cos(pair.phi) - Math.cos(one.phi);
  return Math.abs(x(two) * y(three) - x(three) * y(two));
}
