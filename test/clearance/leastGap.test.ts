/** The least gap over the travel: where geometry says it in closed form, and against very many stations measured by other formulas. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceOf, type Gap } from '../../src/clearance/clearance.ts';
import { FOUND, leastGap } from '../../src/clearance/leastGap.ts';
import type { Piece } from '../../src/clearance/piece.ts';
import { createSeparator } from '../../src/clearance/separation.ts';
import { solve } from '../../src/solve.ts';
import { apart, type Point } from '../support/exactGaps.ts';

const DEGREE = Math.PI / 180;

function gapsOf(text: string): {
  readonly keepOuts: readonly Gap[];
  readonly parts: readonly Gap[];
  readonly pin: (path: string, at: number) => Point;
} {
  const { study, problems } = solve(text);
  expect(problems).toEqual([]);
  if (study === undefined) throw new Error('It is not solved');
  const { travel } = study;
  const { build, mechanism } = travel;
  return {
    ...clearanceOf(travel),
    pin: (path, at) => {
      const [name = '', arm = ''] = path.split('.');
      const lever = mechanism.levers.find((each) => each.name === name)!;
      const { cosine, sine } = travel.poseAt(at);
      const from = lever.pins.get(arm)!;
      const [c, s, p] = [cosine[lever.index]!, sine[lever.index]!, build.parameters];
      return [0, 1].map((axis) => 1e3 * (p[from + axis]! + c * p[from + 3 + axis]! + s * p[from + 6 + axis]!)) as unknown as Point;
    },
  };
}

/** An arm 40 mm long and 12 mm broad that turns from 0° to 90°. */
const quadrant = (keepOut: string, lever = 'width: 12 mm'): string => `format: 1
levers:
  crank: {pivot: [0, 0], ${lever}, arms: {out: {radius: 40 mm, angle: 0 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 90 deg}
keep_out: {thing: ${keepOut}}
`;

const leastOf = (text: string) => gapsOf(text).keepOuts[0]!.search(Infinity).least!;

describe('the least gap', () => {
  it('to a post beside the tip’s way is found where the arm points at it', () => {
    const { gap, travel, points } = leastOf(quadrant('{circle: [30, 60], radius: 7 mm}'));
    expect(gap).toBeCloseTo((Math.hypot(30, 60) - 40 - 6 - 7) / 1e3, 12);
    expect(travel).toBeCloseTo(Math.atan2(60, 30) / DEGREE / 90, 6);
    const towards = [30, 60].map((figure) => figure / Math.hypot(30, 60)) as [number, number];
    for (const axis of [0, 1] as const) {
      expect(points[0][axis]).toBeCloseTo((46 * towards[axis]) / 1e3, 6);
      expect(points[1][axis]).toBeCloseTo(([30, 60][axis]! - 7 * towards[axis]) / 1e3, 6);
    }
  });

  it('to a wall is found at the end of the travel', () => {
    const { gap, travel } = leastOf(quadrant('{polygon: [[-50, 48], [50, 48], [50, 52], [-50, 52]]}'));
    expect(gap).toBeCloseTo(0.002, 15);
    expect(travel).toBe(1);
  });

  it('to a needle between two stations is not missed', () => {
    // A tenth of a millimetre thick, half a tenth beyond the way of an arm that is no broader: it is near for 0.2 % of the travel.
    for (const share of [0.3141592, 0.50005, 0.7777]) {
      const angle = share * 90 * DEGREE;
      const [x, y] = [40.15 * Math.cos(angle), 40.15 * Math.sin(angle)];
      const { gap, travel } = leastOf(quadrant(`{circle: [${x}, ${y}], radius: 0.05 mm}`, 'width: 0.1 mm'));
      expect(gap).toBeCloseTo(0.05e-3, 12);
      expect(travel).toBeCloseTo(share, 6);
    }
  });

  it('is below zero by how far the arm reaches in', () => {
    const { gap, travel } = leastOf(quadrant('{polygon: [[-50, 39], [50, 39], [50, 90], [-50, 90]]}'));
    expect(gap).toBeCloseTo(-0.007, 15);
    expect(travel).toBe(1);
  });

  it('is zero where they just touch', () => {
    expect(leastOf(quadrant('{polygon: [[-50, 46], [50, 46], [50, 90], [-50, 90]]}')).gap).toBeCloseTo(0, 15);
  });

  it('goes into the corner of what stands in', () => {
    // The tip moves into the inner corner of a U: 50 − 46 to its bottom, and 6 less than half its breadth to either side.
    const cup = '{polygon: [[-20, 20], [-11, 20], [-11, 50], [11, 50], [11, 20], [20, 20], [20, 60], [-20, 60]]}';
    const { gap } = leastOf(quadrant(cup).replace('angle: 0 deg', 'angle: 90 deg').replace('travel: 90 deg', 'travel: 0.001 deg'));
    expect(gap).toBeCloseTo(0.004, 8);
  });

  it('counts a drum, an outline and every arm', () => {
    const gaps = (lever: string) => leastOf(quadrant('{circle: [0, -60], radius: 10 mm}', lever));
    expect(gaps('drums: {wheel: {radius: 24 mm, wraps: clockwise}}').gap).toBeCloseTo(0.026, 12);
    // The corner at [40, −10] is nearest as drawn: √(40² + 50²) − 10.
    const outlined = gaps('outline: [[0, -10], [40, -10], [40, 10], [20, 2], [0, 10]]');
    expect(outlined.gap).toBeCloseTo(Math.min(50, Math.hypot(40, 50)) / 1e3 - 0.01, 12);
    expect(outlined.pieces[0].kind).toBe('outline');
  });

  it('of a lever that nothing moves is what is drawn', () => {
    const still = '  still: {pivot: [100, 0], width: 4 mm, arms: {tip: {radius: 30 mm, angle: 90 deg}}}\n';
    const text = quadrant('{circle: [100, 60], radius: 10 mm}').replace('pedal:', `${still}pedal:`);
    const { study } = solve(text);
    const gap = clearanceOf(study!.travel).keepOuts.find(({ one }) => one.name === 'still')!;
    expect(gap.search(Infinity).least?.gap).toBeCloseTo(0.018, 12);
  });

  it('that is not less than what is asked for is not told', () => {
    const [gap] = gapsOf(quadrant('{circle: [30, 60], radius: 7 mm}')).keepOuts;
    const least = (Math.hypot(30, 60) - 53) / 1e3;
    expect(gap!.search(least - 1e-6).least).toBeUndefined();
    expect(gap!.search(least - 1e-6).proved).toBeGreaterThanOrEqual(least - 1e-6 - FOUND);
    expect(gap!.search(least + 1e-6).least?.gap).toBeCloseTo(least, 12);
    expect(gap!.search(least - 1e-6).least).toBeUndefined();
  });
});

/** A four-bar with a post near its rod. */
const fourBar = (post: Point, driven: number): string => `format: 1
levers:
  foot: {pivot: [0, 0], width: 8 mm, arms: {out: {radius: 40 mm, angle: 70 deg}}}
  shaft: {pivot: [110, 10], width: 10 mm, arms: {arm: {radius: ${driven} mm, angle: 95 deg}}}
pedal: {lever: foot, opens: clockwise, travel: 80 deg}
rods: {link: {from: foot.out, to: shaft.arm, width: 6 mm}}
keep_out: {post: {circle: [${post[0]}, ${post[1]}], radius: 4 mm}}
`;

describe('the least gap of a four-bar’s parts', () => {
  const STATIONS = 4000;

  it('is what very many stations come to, and nowhere above them', () => {
    // Off the pivots: a post on one lies within the arm all the way, and as deep.
    const isOff = ([x, y]: Point) => Math.hypot(x, y) > 1 && Math.hypot(x - 110, y - 10) > 1;
    const places = fc.tuple(fc.double({ min: -20, max: 130, noNaN: true }), fc.double({ min: -30, max: 70, noNaN: true })).filter(isOff);
    fc.assert(
      fc.property(places, fc.double({ min: 30, max: 50, noNaN: true }), (post, driven) => {
        const { keepOuts, pin } = gapsOf(fourBar(post, driven));
        const cores = (at: number): Readonly<Record<string, readonly Point[]>> => ({
          foot: [[0, 0], pin('foot.out', at)],
          shaft: [[110, 10], pin('shaft.arm', at)],
          link: [pin('foot.out', at), pin('shaft.arm', at)],
        });
        const radii: Readonly<Record<string, number>> = { foot: 4, shaft: 5, link: 3 };
        const least: Record<string, number> = { foot: Infinity, shaft: Infinity, link: Infinity };
        for (let i = 0; i <= STATIONS; i++) {
          for (const [name, core] of Object.entries(cores(i / STATIONS))) {
            if (core.flat().some(Number.isNaN)) continue;
            least[name] = Math.min(least[name]!, apart(core, [post]) - radii[name]! - 4);
          }
        }
        for (const gap of keepOuts) {
          const { least: found, proved } = gap.search(Infinity);
          const sampled = least[gap.one.name]! / 1e3;
          expect(found!.gap, gap.one.name).toBeLessThanOrEqual(sampled + 1e-12);
          // Between two stations a pin goes 40 mm · 80° / 4000 at most, the other at most a few times as far.
          expect(found!.gap).toBeGreaterThan(sampled - 1e-4);
          expect(proved).toBeGreaterThanOrEqual(found!.gap - FOUND);
          expect(gap.along(found!.travel)).toBe(found!.gap);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is the same of the mirrored drawing', () => {
    const mirrored = (text: string): string =>
      text
        .replace(/angle: ([\d.]+) deg/g, (_, angle: string) => `angle: ${180 - Number(angle)} deg`)
        .replace('pivot: [110,', 'pivot: [-110,')
        .replace('circle: [', 'circle: [-')
        .replace('opens: clockwise', 'opens: counterclockwise');
    const text = fourBar([60, 62], 36);
    const [plain, other] = [gapsOf(text), gapsOf(mirrored(text))];
    for (const [i, gap] of plain.keepOuts.entries()) {
      const [a, b] = [gap.search(Infinity).least!, other.keepOuts[i]!.search(Infinity).least!];
      expect(b.gap).toBeCloseTo(a.gap, 12);
      expect(b.travel).toBeCloseTo(a.travel, 6);
      expect(b.points[0][0]).toBeCloseTo(-a.points[0][0], 6);
    }
  });

  it('is the same about an axis that points away', () => {
    const away = fourBar([60, 62], 36)
      .replace('shaft: {pivot: [110, 10],', 'shaft: {pivot: [110, 10], axis: [0, 0, -1], outline: [[100, 0], [120, 0], [80, 50]],')
      .replace('angle: 95 deg', 'angle: -95 deg');
    const plain = fourBar([60, 62], 36).replace(
      'shaft: {pivot: [110, 10],',
      'shaft: {pivot: [110, 10], outline: [[100, 0], [120, 0], [80, 50]],',
    );
    for (const [i, gap] of gapsOf(plain).keepOuts.entries()) {
      expect(gapsOf(away).keepOuts[i]!.search(Infinity).least!.gap).toBeCloseTo(gap.search(Infinity).least!.gap, 12);
    }
  });
});

describe('two levers that move', () => {
  /** The arms of a parallelogram: as far from each other all the way. */
  const parallel = (distance: number): string => `format: 1
levers:
  foot: {pivot: [0, 0], width: 8 mm, arms: {out: {radius: 40 mm, angle: 90 deg}}}
  shaft: {pivot: [${distance}, 0], width: 8 mm, arms: {arm: {radius: 40 mm, angle: 90 deg}}}
pedal: {lever: foot, opens: clockwise, travel: 60 deg}
rods: {link: {from: foot.out, to: shaft.arm}}
`;

  it('that keep beside each other come nearest at the end, where they stand most aslant', () => {
    const [gap] = gapsOf(parallel(30)).parts;
    const { least } = gap!.search(Infinity);
    expect(least!.gap).toBeCloseTo((30 * Math.cos(60 * DEGREE) - 8) / 1e3, 9);
    expect(least!.travel).toBeCloseTo(1, 6);
  });

  it('touch at the angle that geometry says', () => {
    const text = parallel(15);
    const [gap] = gapsOf(text).parts;
    expect(gap!.search(1e-9).least?.gap).toBeLessThan(0);
    // Side by side 15 cos φ apart, 8 mm of which the two halves take.
    const finding = solve(text).findings.find(({ code }) => code === 'parts-touch');
    expect(finding?.ranges?.[0]?.from).toBeCloseTo(Math.acos(8 / 15) / DEGREE / 60, 6);
  });

  it('that turn with each other at one distance are searched no longer than is worth while', () => {
    // Two posts 10 mm from the origin, a right angle apart, carried round it by two levers that turn alike: always 10 √2 mm apart.
    const post = (lever: number, x: number, y: number): Piece => ({
      corners: [{ lever, base: [0, 0], perp: [x, y], cross: [-y, x] }],
      radius: 2,
      name: 'post',
      kind: 'arm',
    });
    const stationAt = (travel: number) => ({
      travel,
      rotation: [travel, travel],
      cosine: [Math.cos(travel), Math.cos(travel)],
      sine: [Math.sin(travel), Math.sin(travel)],
    });
    const body = { kind: 'lever', name: 'any', pieces: [], levers: [0, 1] } as unknown as Gap['one'];
    const pair = { one: body, other: body, pieces: [[post(0, 10, 0), post(1, 0, 10)]] } as const;
    const spans = [{ from: stationAt(0), to: stationAt(1) }];
    const search = (below: number) => leastGap({ pair, spans, stationAt, separate: createSeparator() }, below);
    const gap = (10 * Math.SQRT2 - 4) / 1e3;
    const whole = search(Infinity);
    expect(whole.least!.gap).toBeCloseTo(gap, 12);
    // Twice 10 mm go into 1 rad; after two thousand looks what is left is a two-thousandth of it.
    expect(whole.proved).toBeLessThan(gap - FOUND);
    expect(whole.proved).toBeGreaterThan(gap - 2e-5);
    // Proved where that is enough, and left open, not passed, where it is not.
    expect(search(gap - 1e-4)).toEqual({ least: undefined, proved: expect.closeTo(gap - 1e-4, 6) as number });
    const open = search(gap - 1e-6);
    expect(open.least).toBeUndefined();
    expect(open.proved).toBeLessThan(gap - 1e-6 - 2 * FOUND);
  });
});
