/**
 * Gaps in space of a capsule and what stands from one height to another, random ones and those at the edge, against formulas of the tests' own:
 * the distance to a convex thing is convex along the core and is searched there by thirds; of two that are set apart by construction it is known.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/clearance/piece.ts';
import { createSeparator } from '../../src/clearance/separation.ts';
import { apart, hullOf, type Point } from '../support/exactGaps.ts';

type Point3 = readonly [number, number, number];

/** mm: what the search in the test leaves of figures of some hundred millimetres. */
const SEARCHED = 1e-6;
const ROUNDING = 1e-9;

const still = { rotation: [], cosine: [], sine: [] };
const separate = createSeparator();
const zero = [0, 0, 0] as const;
const bar = (from: Point3, to: Point3, radius: number): Piece => ({
  corners: [from, to].map((base) => ({ lever: -1, base, perp: zero, cross: zero })),
  radius,
  name: 'bar',
  kind: 'arm',
});
const post = (corners: readonly Point[], radius: number, between: readonly [number, number]): Piece => ({
  corners: corners.map((base) => ({ lever: -1, base, perp: zero, cross: zero })),
  radius,
  between,
  name: 'post',
  kind: 'keep-out',
});
const gapOf = (from: Point3, to: Point3, radius: number, other: Piece) => separate(bar(from, to, radius), other, still).gap;

/** Distance of a place from what stands on `core`, rounded by `radius` seen along z, between two heights. */
function away([x, y, z]: Point3, core: readonly Point[], radius: number, [low, high]: readonly [number, number]): number {
  return Math.hypot(Math.max(0, apart([[x, y]], core) - radius), Math.max(0, low - z, z - high));
}

/** Least of that along a stretch, by thirds. */
function awayAlong(from: Point3, to: Point3, figure: (at: Point3) => number): number {
  const at = (t: number): number => figure([0, 1, 2].map((i) => from[i]! + t * (to[i]! - from[i]!)) as unknown as Point3);
  let [low, high] = [0, 1];
  for (let i = 0; i < 150; i++) {
    const [one, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (at(one) <= at(other)) high = other;
    else low = one;
  }
  return Math.min(at((low + high) / 2), at(0), at(1));
}

/** To a thousandth of a millimetre: what is narrower than that is no keep-out. */
const figure = fc.integer({ min: -200_000, max: 200_000 }).map((each) => each / 1000);
const point3 = fc.tuple(figure, figure, figure);
const radius = fc.double({ min: 0, max: 30, noNaN: true });
const heights = fc.tuple(figure, fc.double({ min: 0.01, max: 150, noNaN: true })).map(([low, tall]) => [low, low + tall] as const);
const hull = fc
  .array(fc.tuple(figure, figure), { minLength: 3, maxLength: 12 })
  .map(hullOf)
  .filter((corners) => corners.length > 2);

describe('the gap of a bar and a prism', () => {
  it('is the distance less the radius where they are apart, and never more', () => {
    let deep = 0;
    fc.assert(
      fc.property(point3, point3, radius, hull, heights, (from, to, r, corners, between) => {
        const distance = awayAlong(from, to, (at) => away(at, corners, 0, between));
        const gap = gapOf(from, to, r, post(corners, 0, between));
        if (distance < SEARCHED) deep++;
        expect(gap + r - distance).toBeLessThan(ROUNDING);
        if (distance > SEARCHED) expect(gap + r - distance).toBeGreaterThan(-SEARCHED);
        else expect(gap + r).toBeLessThan(2 * SEARCHED);
      }),
      { numRuns: 3000 },
    );
    expect(deep).toBeGreaterThan(300);
  });

  it('is below zero the least shift that parts them', () => {
    fc.assert(
      fc.property(point3, point3, hull, heights, (from, to, corners, between) => {
        const { gap, ux, uy, uz } = separate(bar(from, to, 0), post(corners, 0, between), still);
        if (gap >= 0) return;
        const shifted = (p: Point3, by: number): Point3 => [p[0] + by * ux, p[1] + by * uy, p[2] + by * uz];
        // Moved back by the depth they touch, by a little less they do not part.
        expect(Math.abs(gapOf(shifted(from, gap), shifted(to, gap), 0, post(corners, 0, between)))).toBeLessThan(1e-7);
        // No shift that is shorter parts them, whatever its way.
        for (let i = 0; i < 100; i++) {
          const [z, turn] = [(2 * i + 1) / 100 - 1, 2.399963 * i];
          const way: Point3 = [Math.sqrt(1 - z * z) * Math.cos(turn), Math.sqrt(1 - z * z) * Math.sin(turn), z];
          const by = 0.999 * gap;
          const moved = ([x, y, height]: Point3): Point3 => [x + by * way[0], y + by * way[1], height + by * way[2]];
          expect(awayAlong(moved(from), moved(to), (at) => away(at, corners, 0, between))).toBeLessThan(SEARCHED);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('the gap of a bar and a round post', () => {
  it('is the distance less the radius where they are apart, and never more', () => {
    let deep = 0;
    fc.assert(
      fc.property(
        point3,
        point3,
        radius,
        fc.tuple(figure, figure),
        fc.double({ min: 0.1, max: 120, noNaN: true }),
        heights,
        (from, to, r, at, wide, between) => {
          const distance = awayAlong(from, to, (place) => away(place, [at], wide, between));
          const gap = gapOf(from, to, r, post([at], wide, between));
          if (distance < SEARCHED) deep++;
          expect(gap + r - distance).toBeLessThan(ROUNDING);
          if (distance > SEARCHED) expect(gap + r - distance).toBeGreaterThan(-10 * SEARCHED);
          else expect(gap + r).toBeLessThan(2 * SEARCHED);
        },
      ),
      { numRuns: 3000 },
    );
    expect(deep).toBeGreaterThan(30);
  });
});

/** A stretch in the plane that lies `gap` + `r` off a place of the edge, square to a way out of it: that is how far apart they are. */
const offset = fc.record({
  turn: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
  before: fc.double({ min: 0, max: 120, noNaN: true }),
  after: fc.double({ min: 0.1, max: 120, noNaN: true }),
});
interface Offset {
  readonly turn: number;
  readonly before: number;
  readonly after: number;
}

function barBeside(at: Point3, out: Point3, distance: number, { turn, before, after }: Offset): readonly [Point3, Point3] {
  const size = Math.hypot(...out);
  const u = out.map((each) => each / size) as unknown as Point3;
  const p: Point3 = Math.abs(u[2]) < 0.9 ? [u[1], -u[0], 0] : [0, u[2], -u[1]];
  const q: Point3 = [u[1] * p[2] - u[2] * p[1], u[2] * p[0] - u[0] * p[2], u[0] * p[1] - u[1] * p[0]];
  const [long, wide] = [Math.hypot(...p), Math.hypot(...q)];
  const way = [0, 1, 2].map((i) => (Math.cos(turn) * p[i]!) / long + (Math.sin(turn) * q[i]!) / wide);
  const end = (by: number): Point3 => [0, 1, 2].map((i) => at[i]! + distance * u[i]! + by * way[i]!) as unknown as Point3;
  return [end(-before), end(after)];
}

describe('a bar that is set beside an edge, corner or face', () => {
  const near = fc.constantFrom(0, 1e-6, 0.001, 0.05, 3);
  const part = fc.double({ min: 0, max: 1, noNaN: true });

  it('is as far from a prism as it was set, and caught where it touches', () => {
    fc.assert(
      fc.property(
        hull,
        heights,
        radius,
        near,
        offset,
        part,
        part,
        fc.nat(11),
        fc.nat(3),
        (corners, between, r, gap, along, one, other, which, feature) => {
          const [a, b, c] = [0, 1, 2].map((i) => corners[(which + i) % corners.length]!) as [Point, Point, Point];
          const normal = (p: Point, q: Point): Point =>
            [q[1] - p[1], p[0] - q[0]].map((each) => each / Math.hypot(q[0] - p[0], q[1] - p[1])) as unknown as Point;
          const [first, second] = [normal(a, b), normal(b, c)];
          const mixed: Point = [one * first[0] + (1 - one) * second[0], one * first[1] + (1 - one) * second[1]];
          const z = between[0] + other * (between[1] - between[0]);
          const on: Point = [a[0] + one * (b[0] - a[0]), a[1] + one * (b[1] - a[1])];
          const [at, out]: readonly [Point3, Point3] =
            feature === 0
              ? [
                  [...b, between[1]],
                  [other * mixed[0], other * mixed[1], 1 - other + 1e-3],
                ]
              : feature === 1
                ? [
                    [...b, z],
                    [...mixed, 0],
                  ]
                : feature === 2
                  ? [
                      [...on, between[0]],
                      [other * first[0], other * first[1], other - 1 - 1e-3],
                    ]
                  : [
                      [...on, z],
                      [...first, 0],
                    ];
          if (Math.hypot(...out) < 0.05) return;
          const [from, to] = barBeside(at, out, gap + r, along);
          const told = gapOf(from, to, r, post(corners, 0, between));
          expect(told - gap).toBeLessThan(ROUNDING);
          expect(told - gap).toBeGreaterThan(-1e-6);
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('is as far from a round post as it was set', () => {
    fc.assert(
      fc.property(
        fc.tuple(figure, figure),
        fc.double({ min: 0.5, max: 80, noNaN: true }),
        heights,
        radius,
        near,
        offset,
        part,
        part,
        fc.nat(1),
        (centre, wide, between, r, gap, along, one, other, feature) => {
          const turn = 2 * Math.PI * one;
          const out: Point = [Math.cos(turn), Math.sin(turn)];
          const rim: Point = [centre[0] + wide * out[0], centre[1] + wide * out[1]];
          const z = between[0] + other * (between[1] - between[0]);
          const [at, way]: readonly [Point3, Point3] =
            feature === 0
              ? [
                  [...rim, z],
                  [...out, 0],
                ]
              : [
                  [...rim, between[1]],
                  [other * out[0], other * out[1], 1.001 - other],
                ];
          const [from, to] = barBeside(at, way, gap + r, along);
          const told = gapOf(from, to, r, post([centre], wide, between));
          expect(told - gap).toBeLessThan(ROUNDING);
          expect(told - gap).toBeGreaterThan(-1e-6);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('bars without a length, and along z', () => {
  it('have the gaps that anyone can see', () => {
    const box = post(
      hullOf([
        [-10, -10],
        [10, -10],
        [10, 10],
        [-10, 10],
      ]),
      0,
      [0, 20],
    );
    expect(gapOf([0, 0, 25], [0, 0, 25], 2, box)).toBeCloseTo(3, 12);
    expect(gapOf([13, 14, -12], [13, 14, -12], 1, box)).toBeCloseTo(Math.hypot(3, 4, 12) - 1, 12);
    expect(gapOf([14, 0, -50], [14, 0, 50], 1, box)).toBeCloseTo(3, 12);
    expect(gapOf([0, 0, -50], [0, 0, 50], 1, box)).toBeCloseTo(-11, 12);
    const round = post([[0, 0]], 10, [0, 20]);
    expect(gapOf([14, 0, -50], [14, 0, 50], 1, round)).toBeCloseTo(3, 12);
    expect(gapOf([0, 0, -50], [0, 0, 50], 1, round)).toBeCloseTo(-11, 6);
    expect(gapOf([0, 0, 22], [0, 0, 30], 0.5, round)).toBeCloseTo(1.5, 12);
    expect(gapOf([13, 0, 24], [30, 0, 24], 0, round)).toBeCloseTo(5, 9);
    expect(gapOf([-50, 0, 18], [50, 0, 18], 1, round)).toBeCloseTo(-3, 6);
  });
});
