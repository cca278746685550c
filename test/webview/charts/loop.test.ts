/** The loop of pressing and coming back, as it is drawn. */
import { describe, expect, test } from 'vitest';
import type { Chart } from '../../../src/protocol/charts.ts';
import { arrowsOn, loopOf } from '../../../webview/charts/loop.ts';
import { curvePath } from '../../../webview/charts/curve.ts';

const plot = {
  left: 40,
  right: 340,
  top: 10,
  bottom: 138,
  x: (travel: number) => 40 + 300 * travel,
  y: (figure: number) => 138 - 4 * figure,
};
const stations = Float64Array.from({ length: 41 }, (_, index) => index / 40);
const effort = stations.map((at) => 12 + 10 * at + 3 * Math.sin(5 * at));
const release = stations.map((at) => 6 + 8 * at);

const curve = (column: string, values: Float64Array) => ({ column, label: column, part: 'pedal', values, digits: 1 });
const chart = (...curves: Chart['curves']): Chart => ({ id: 'effort', title: 'Force', unit: 'N', curves, bands: [], straight: false });
const loop = (out: Float64Array, back: Float64Array) => {
  const made = chart(curve('pedal.effort', out), curve('pedal.release', back));
  return loopOf(made, new Map(made.curves.map(({ column, values }) => [column, curvePath(stations, values, plot)])));
};

const spotsOf = (path: string) => [...path.matchAll(/([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));

describe('the loop', () => {
  test('is closed, and has within it what lies between its two curves', () => {
    const { within } = loop(effort, release)!;
    expect(within).toMatch(/^M[^M]*Z$/);
    const spots = spotsOf(within);
    // The shoelace formula, against the trapezoidal rule on the figures: 300 px are the whole travel, 4 px are 1 N.
    let twice = 0;
    spots.forEach(({ x, y }, i) => {
      const next = spots[(i + 1) % spots.length]!;
      twice += x * next.y - next.x * y;
    });
    let between = 0;
    for (let i = 1; i < stations.length; i++) between += (effort[i]! - release[i]! + effort[i - 1]! - release[i - 1]!) / 80;
    // Tenths of a pixel on each of 300 px.
    expect(Math.abs(Math.abs(twice) / 2 - between * 300 * 4)).toBeLessThan(0.1 * 300);
  });

  test('has ends from curve to curve where the foot turns round', () => {
    const [a, b, c, d] = spotsOf(loop(effort, release)!.ends);
    expect([a!.x, b!.x, c!.x, d!.x]).toEqual([340, 340, 40, 40]);
    expect(a!.y).toBeCloseTo(plot.y(effort.at(-1)!), 1);
    expect(b!.y).toBeCloseTo(plot.y(release.at(-1)!), 1);
    expect(c!.y).toBeCloseTo(plot.y(release[0]!), 1);
    expect(d!.y).toBeCloseTo(plot.y(effort[0]!), 1);
  });

  test('is none where a curve is not known all the way, or there is one alone', () => {
    const torn = effort.map((value, i) => (i === 20 ? Number.NaN : value));
    expect(loop(torn, release)).toBeUndefined();
    expect(loop(effort, release.fill.call(release.slice(), Number.NaN) as Float64Array)).toBeUndefined();
    const alone = chart(curve('pedal.effort', effort));
    expect(loopOf(alone, new Map([['pedal.effort', curvePath(stations, effort, plot)]]))).toBeUndefined();
  });
});

describe('its arrows', () => {
  test.each([
    { way: 1 as const, says: 'to the right pressing' },
    { way: -1 as const, says: 'to the left coming back' },
  ])('point $says, with their tips on the curve', ({ way }) => {
    const heads = spotsOf(arrowsOn(stations, effort, plot, way));
    expect(heads.length).toBe(6);
    for (let i = 0; i < heads.length; i += 3) {
      const [barb, tip, other] = heads.slice(i, i + 3);
      expect(Math.sign(tip!.x - (barb!.x + other!.x) / 2)).toBe(way);
      const at = (tip!.x - plot.left) / 300;
      expect(Math.abs(tip!.y - plot.y(12 + 10 * at + 3 * Math.sin(5 * at)))).toBeLessThan(0.2);
    }
  });

  test('are left out where the curve has no figure', () => {
    expect(arrowsOn(stations, new Float64Array(41).fill(Number.NaN), plot, 1)).toBe('');
  });
});
