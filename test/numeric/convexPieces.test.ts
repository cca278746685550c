/** Polygons that stand in somewhere, split into convex pieces, and polygons that are none. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexPieces, isConvex } from '../../src/numeric/convexPieces.ts';
import { doubleArea, faultOf, type Corner } from '../../src/numeric/polygon.ts';
import { isInside } from '../support/exactGaps.ts';

const MOST = 12;

/** Corners about the origin at rising angles: simple, and mostly standing in. */
const star = fc
  .array(fc.tuple(fc.double({ min: 0.05, max: 1, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true })), {
    minLength: 3,
    maxLength: 40,
  })
  .map((steps) => {
    const whole = steps.reduce((sum, [step]) => sum + step, 0);
    let angle = 0;
    return steps.map(([step, radius]): Corner => {
      angle += (step / whole) * 2 * Math.PI;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });
  })
  .filter((corners) => faultOf(corners) === undefined);

describe('convex pieces of a polygon', () => {
  it('are convex, of twelve corners at most, and cover it once', () => {
    fc.assert(
      fc.property(
        star,
        fc.boolean(),
        fc.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true })),
        (corners, backwards, at) => {
          const pieces = convexPieces(backwards ? corners.toReversed() : corners, MOST)!;
          const area = pieces.reduce((sum, piece) => sum + doubleArea(piece), 0);
          expect(Math.abs(area - Math.abs(doubleArea(corners)))).toBeLessThan(1e-9 * Math.abs(doubleArea(corners)));
          for (const piece of pieces) {
            expect(piece.length).toBeLessThanOrEqual(MOST);
            expect(isConvex(piece)).toBe(true);
          }
          expect(pieces.filter((piece) => isInside(at, piece))).toHaveLength(isInside(at, corners) ? 1 : 0);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('are few: an L is two', () => {
    const pieces = convexPieces(
      [
        [0, 0],
        [30, 0],
        [30, 10],
        [10, 10],
        [10, 30],
        [0, 30],
      ],
      MOST,
    );
    expect(pieces).toHaveLength(2);
  });

  it('of one that is convex are itself, without its needless corners', () => {
    const square: readonly Corner[] = [
      [0, 0],
      [5, 0],
      [5, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    expect(convexPieces(square, MOST)).toEqual([
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
    ]);
  });

  it('of one with more corners than a piece may have are more than one', () => {
    const round = Array.from({ length: 30 }, (_, i): Corner => [Math.cos((i * Math.PI) / 15), Math.sin((i * Math.PI) / 15)]);
    const pieces = convexPieces(round, MOST)!;
    expect(pieces.length).toBeGreaterThan(1);
    expect(pieces.every(({ length }) => length <= MOST)).toBe(true);
  });
});

describe('corners', () => {
  it.each<[string, readonly Corner[], ReturnType<typeof faultOf>]>([
    [
      'of a square',
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
      undefined,
    ],
    [
      'of which one is given twice',
      [
        [0, 0],
        [1, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
      undefined,
    ],
    [
      'that end where they began',
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 0],
      ],
      undefined,
    ],
    [
      'on one line bound nothing',
      [
        [0, 0],
        [1, 1],
        [2, 2],
      ],
      { kind: 'flat' },
    ],
    [
      'that are all the same bound nothing',
      [
        [1, 1],
        [1, 1],
        [1, 1],
        [1, 1],
      ],
      { kind: 'flat' },
    ],
    [
      'of a bow tie cross',
      [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ],
      { kind: 'crossing', first: 0, second: 2 },
    ],
    [
      'of a bow tie with halves of two sizes cross',
      [
        [0, 0],
        [3, 3],
        [3, 0],
        [0, 2],
      ],
      { kind: 'crossing', first: 0, second: 2 },
    ],
    [
      'with a spike touch themselves',
      [
        [0, 0],
        [4, 0],
        [4, 3],
        [4, 6],
        [4, 3],
        [0, 3],
      ],
      { kind: 'crossing', first: 1, second: 3 },
    ],
    [
      'that come back to one of them touch',
      [
        [0, 0],
        [4, 0],
        [2, 2],
        [4, 4],
        [0, 4],
        [2, 2],
      ],
      { kind: 'crossing', first: 1, second: 4 },
    ],
  ])('%s', (_name, corners, fault) => {
    expect(faultOf(corners)).toEqual(fault);
  });
});
