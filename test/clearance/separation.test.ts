/** Gaps of two convex pieces, random ones and those at the edge, against formulas of the tests' own. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/clearance/piece.ts';
import { createSeparator } from '../../src/clearance/separation.ts';
import { apart, depthOf, hullOf, type Point } from '../support/exactGaps.ts';

/** mm; rounding of figures of some hundred millimetres, squared on the way and taken the root of. */
const ROUNDING = 1e-9;

const piece = (corners: readonly Point[], radius: number): Piece => ({
  corners: corners.map((base) => ({ lever: -1, base, perp: [0, 0], cross: [0, 0] })),
  radius,
  name: 'piece',
  kind: 'arm',
});
const still = { rotation: [], cosine: [], sine: [] };
const separate = createSeparator();
const between = (a: readonly Point[], radiusA: number, b: readonly Point[], radiusB: number) =>
  separate(piece(a, radiusA), piece(b, radiusB), still);

const figure = fc.double({ min: -200, max: 200, noNaN: true, noDefaultInfinity: true });
const point = fc.tuple(figure, figure);
const radius = fc.double({ min: 0, max: 30, noNaN: true });
/** A point, a stretch or a convex polygon of up to twelve corners. */
const core = fc.oneof(
  fc.array(point, { minLength: 1, maxLength: 2 }),
  fc
    .array(point, { minLength: 3, maxLength: 12 })
    .map(hullOf)
    .filter((hull) => hull.length > 2),
);

describe('the gap of two convex pieces', () => {
  it('is the distance of their cores less the radii, or below it the least shift that parts them', () => {
    fc.assert(
      fc.property(core, radius, core, radius, (a, ra, b, rb) => {
        const { gap } = between(a, ra, b, rb);
        const distance = apart(a, b);
        expect(Math.abs(gap - ((distance > 0 ? distance : -depthOf(a, b)) - ra - rb))).toBeLessThan(ROUNDING);
      }),
      { numRuns: 3000 },
    );
  });

  it('has its two points on both edges, as far apart as it is wide', () => {
    fc.assert(
      fc.property(core, radius, core, radius, (a, ra, b, rb) => {
        const { gap, ux, uy, onA, onB } = between(a, ra, b, rb);
        expect(Math.abs((onB.x - onA.x) * ux + (onB.y - onA.y) * uy - gap)).toBeLessThan(ROUNDING);
        expect(Math.abs((onB.x - onA.x) * uy - (onB.y - onA.y) * ux)).toBeLessThan(ROUNDING);
        // A point of an edge is a radius from its core; where the cores overlap one of the two may lie elsewhere along the side.
        if (gap > -Math.min(ra, rb)) {
          expect(Math.abs(apart([[onA.x, onA.y]], a) - ra)).toBeLessThan(ROUNDING);
          expect(Math.abs(apart([[onB.x, onB.y]], b) - rb)).toBeLessThan(ROUNDING);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('is the same the other way round', () => {
    fc.assert(
      fc.property(core, radius, core, radius, (a, ra, b, rb) => {
        expect(Math.abs(between(a, ra, b, rb).gap - between(b, rb, a, ra).gap)).toBeLessThan(ROUNDING);
      }),
      { numRuns: 500 },
    );
  });

  it('takes no skin and no welded corner from planck: things of a hundredth of a millimetre have their own gap', () => {
    const tiny: readonly Point[] = [
      [0, 0],
      [0.01, 0],
      [0, 0.01],
    ];
    expect(between(tiny, 0, [[0.02, 0]], 0).gap).toBeCloseTo(0.01, 12);
    expect(between(tiny, 0, [[0.003, 0.003]], 0).gap).toBeCloseTo(-0.004 / Math.SQRT2, 12);
  });

  it.each([
    ['two circles about one centre', [[5, 5]], 3, [[5, 5]], 2, -5],
    [
      'a circle on the middle of a capsule',
      [
        [0, 0],
        [10, 0],
      ],
      2,
      [[5, 0]],
      1,
      -3,
    ],
    [
      'two capsules along one line',
      [
        [0, 0],
        [10, 0],
      ],
      2,
      [
        [14, 0],
        [20, 0],
      ],
      1,
      1,
    ],
    [
      'two capsules that cross',
      [
        [-10, 0],
        [10, 0],
      ],
      2,
      [
        [0, -4],
        [0, 6],
      ],
      1,
      -7,
    ],
    [
      'a capsule without a length',
      [
        [3, 4],
        [3, 4],
      ],
      1,
      [[0, 0]],
      1,
      3,
    ],
    [
      'a corner on a side',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      0,
      [
        [10, 5],
        [14, 3],
        [14, 7],
      ],
      0,
      0,
    ],
    [
      'one square in another',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
      0,
      [
        [6, 4],
        [8, 4],
        [8, 6],
        [6, 6],
      ],
      0,
      -4,
    ],
  ] as const)('%s', (_name, a, ra, b, rb, gap) => {
    expect(between(a, ra, b, rb).gap).toBeCloseTo(gap, 12);
  });
});
